import { mouldById, updateMould } from '../../../db/stores/mould-store.ts';
import { addWorkRecords } from '../../../db/stores/work-record-store.ts';
import { thereIsNo } from '../../../shared/said-back.ts';
import type { MarkDetails } from '../../engine/book/mark.ts';
import { type PartSaid, sayOfPart } from '../../engine/book/mould-parts.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { writeBooked } from '../plan/recording-work.ts';
import type { MouldWas } from '../typed/mould-mark-form.ts';
import { mouldMeanwhile } from './mould-meanwhile.ts';

/** Where a fault about the mould stands on the form about a part of it. */
const FIELDS: Readonly<Record<string, string>> = { mark: 'part', repairedOn: 'partRepairedOn' };

const onForm = <T>(outcome: Outcome<T>): Outcome<T> =>
  outcome.ok
    ? outcome
    : { ok: false, faults: outcome.faults.map((fault) => ({ ...fault, path: FIELDS[fault.path] ?? fault.path })) };

/** "1200 no. 2: ends broken" */
const wordsOf = (id: string, { part, condition }: PartSaid): string =>
  condition === 'none' ? `${id} has no ${part}` : `${id}: ${part} ${condition}`;

/**
 * Records how a part of a mould's set is. A broken one takes the mould out of use, and the plan that comes of it says which
 * dates moved; the last one that is mended frees it. `was` is how the mould stood on the form.
 */
export const sayHowPartIs = (
  context: UseCaseContext,
  id: string,
  said: PartSaid,
  details: Pick<MarkDetails, 'repairedOn' | 'cameOut'>,
  was: MouldWas = {},
): Promise<Outcome<Changed<null>>> =>
  changing(context, { kind: 'mould part', words: wordsOf(id, said) }, async (tx, yard) => {
    const mould = await mouldById(tx, id);
    if (!mould) return refuse('part', thereIsNo('mould', id));
    const damageNote = mould.damageNote ?? '';
    const typed = { note: damageNote, repairedOn: details.repairedOn };
    const faults = mouldMeanwhile(mould, was, typed, todayIn(yard));
    if (faults.length > 0) return onForm({ ok: false, faults });
    const booked = sayOfPart(yard, id, mould.parts ?? [], said, { ...details, damageNote });
    const written = onForm(await writeBooked(tx, booked));
    if (!booked.ok || !written.ok) return written;
    await updateMould(tx, id, { parts: booked.parts });
    await addWorkRecords(tx, booked.records, context.by);
    return written;
  });
