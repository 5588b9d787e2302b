import type { Tx } from '../../../db/open.ts';
import type { Doubt } from '../../../shared/doubt.ts';
import type { PlanOfWork } from '../../../shared/late-work.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { goodsOfOrder } from '../../engine/book/goods.ts';
import { sticksFor } from '../../engine/book/sticks-cut.ts';
import { done, type Outcome, today, type UseCaseContext } from '../core/context.ts';
import { earlierWords } from '../core/day-words.ts';
import { writtenAt } from '../core/written-at.ts';
import type { Changed } from '../plan/changing.ts';
import { asked, shortQuestion } from '../plan/doubts.ts';
import { farOffQuestion, WEEK } from '../plan/far-off.ts';
import { orRecorded, recordedSteps } from '../plan/recorded-once.ts';
import { plannedFor, recordingWork } from '../plan/recording-work.ts';
import { measuresOf } from '../typed/measures.ts';
import { orderName, unpackedOrder } from './open-order.ts';

interface Packed {
  name: string;
  /** When, in words, where that is another day. */
  when: string;
}

/** The name by which the packing of an order is found again. */
export const packStep = (order: string): string => `pack ${order}`;

export interface PackRecord {
  /** The maker has counted: pieces that the book is short of were there. */
  evenShort: boolean;
  /** When, as `writtenAt` has it. */
  at?: string | null;
  /** What the maker was asked about, and is sure of. */
  sure?: readonly Doubt[];
}

/** A packing told of a day far off is asked about. */
const farOff = (
  tx: Tx,
  yard: YardFile,
  work: PlanOfWork,
  { id, takenAt, doneAt }: { id: string; takenAt: string | null; doneAt: string },
) => {
  const packStart = work.orders.find((order) => order.id === id && order.packStart !== undefined)?.packStart;
  const plannedAt = packStart ? minuteOf(packStart) : null;
  const earliest = (plannedAt ?? 0) - WEEK;
  return farOffQuestion(tx, yard, { at: minuteOf(doneAt), plannedAt, earliest, since: takenAt });
};

/**
 * An order is packed: its pieces, parts and cut lengths are out of stock, and it waits to be handed over. When the stock
 * book is short of pieces it is refused, unless the maker has counted; when it is short of parts the maker is asked.
 */
export const packOrder = (
  context: UseCaseContext,
  id: string,
  { evenShort, at, sure = [] }: PackRecord,
): Promise<Outcome<Changed<Packed | null>>> =>
  orRecorded(context, { names: [packStep(id)], at, field: 'order' }, () =>
    recordingWork<Packed>(
      context,
      { kind: 'packed', words: ({ name, when }) => `Packed for ${name}${when}` },
      async (tx, yard, plan, toDo) => {
        const doneAt = writtenAt(at, { now: context.now, yard });
        if (!doneAt.ok) return doneAt;
        const found = await unpackedOrder(tx, id);
        if (!found.ok) return found;
        const { lines, takenAt } = found.value;
        const far = asked('day', sure, at ? await farOff(tx, yard, toDo, { id, takenAt, doneAt: doneAt.value }) : null);
        if (!far.ok) return far;
        const { system } = await measuresOf(tx);
        const taking = { taken: goodsOfOrder(lines, yard), named: sticksFor(plan.sticks, id) };
        const short = asked('short', sure, shortQuestion(yard, taking, system));
        if (!short.ok) return short;
        const planned = plannedFor(plan, id);
        const work = { kind: 'packed' as const, order: id, lines, evenShort, planned, doneAt: doneAt.value };
        const named = recordedSteps([packStep(id)], work, yard);
        const when = earlierWords(doneAt.value, today(yard.yard.timeZone, context.now));
        return done({ steps: [{ work: () => done(work) }], value: { name: orderName(found.value), when }, named });
      },
    ),
  );
