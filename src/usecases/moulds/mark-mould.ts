import { mouldById } from '../../../db/stores/mould-store.ts';
import { addWorkRecords } from '../../../db/stores/work-record-store.ts';
import { type MarkDetails, type MouldMark, mark } from '../../engine/book/mark.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { recordsOfMark } from '../../engine/book/work-records.ts';
import type { Outcome, UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { writeBooked } from '../plan/recording-work.ts';
import type { MouldWas } from '../typed/mould-mark-form.ts';
import { mouldMeanwhile } from './mould-meanwhile.ts';

export { type MarkDetails, MOULD_MARKS, type MouldMark } from '../../engine/book/mark.ts';

/** Records what became of a mould; the plan that comes of it says which dates moved. `was` is how it stood on the form. */
export const markMould = (
  context: UseCaseContext,
  id: string,
  what: MouldMark,
  details: MarkDetails,
  was: MouldWas = {},
): Promise<Outcome<Changed<null>>> =>
  changing(context, { kind: `mould ${what}`, words: `${id} marked ${what}` }, async (tx, yard) => {
    const mould = await mouldById(tx, id);
    const faults = mould ? mouldMeanwhile(mould, was, details, todayIn(yard)) : [];
    const marked = faults.length > 0 ? { ok: false as const, faults } : mark(yard, id, what, details);
    if (marked.ok) await addWorkRecords(tx, recordsOfMark(id, what, details, yard), context.by);
    return writeBooked(tx, marked);
  });
