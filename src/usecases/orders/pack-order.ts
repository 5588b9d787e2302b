import type { Tx } from '../../../db/open.ts';
import { finishedPieces } from '../../../db/stores/finished-store.ts';
import type { StoredOrder } from '../../../db/stores/order-store.ts';
import { daysText } from '../../../shared/days-text.ts';
import type { Doubt } from '../../../shared/doubt.ts';
import type { PlanOfWork } from '../../../shared/late-work.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { goodsOfOrder, linesToTake, packMinutesLeft } from '../../engine/book/goods.ts';
import { sticksFor } from '../../engine/book/sticks-cut.ts';
import { done, type Outcome, today, type UseCaseContext } from '../core/context.ts';
import { earlierWords } from '../core/day-words.ts';
import { writtenAt } from '../core/written-at.ts';
import type { Changed } from '../plan/changing.ts';
import { daysAfter } from '../plan/days-late.ts';
import { asked, shortQuestion } from '../plan/doubts.ts';
import { farOffQuestion, WEEK } from '../plan/far-off.ts';
import { orRecorded, recordedSteps } from '../plan/recorded-once.ts';
import { plannedFor, recordingWork } from '../plan/recording-work.ts';
import { measuresOf } from '../typed/measures.ts';
import { orderName, orderToPack } from './open-order.ts';
import { type PackingOfStep, packingOfStep } from './packing-of-step.ts';
import { piecesTicked } from './pieces-to-pack.ts';

interface Packed {
  name: string;
  /** When, in words, where that is another day. */
  when: string;
  /** Of a spell with others after it; null where all of it is packed. */
  minutes: number | null;
  /** Days from the date given, or else asked for, to the day on which all of it was packed; 0 where that was in time. */
  daysLate: number;
  isWanted: boolean;
}

/** The name by which the packing of an order is found again; a spell of one is found by the name of its step. */
export const packStep = (order: string): string => `pack ${order}`;

export interface PackRecord {
  /** The maker has counted: pieces that the book is short of were there. */
  evenShort: boolean;
  /** When, as `writtenAt` has it. */
  at?: string | null;
  /** What the maker was asked about, and is sure of. */
  sure?: readonly Doubt[];
  /** The step on the page: of an order that is packed over several sessions, the spell. */
  step?: string | null;
  /** The pieces that went into it, by their numbers in the store; left out, or none: those by the plan. */
  pieces?: readonly number[];
  /** For how many minutes, where that is not as planned; of such an order alone. */
  minutes?: number | null;
}

/** What a packing is asked about from: the order as it is stored, when it was done, and when it was planned. */
interface Asking {
  order: StoredOrder;
  doneAt: string;
  packing: PackingOfStep;
}

/** A packing told of a day far off is asked about. */
const farOff = (tx: Tx, yard: YardFile, { order, doneAt, packing: { packStart } }: Asking) => {
  const plannedAt = packStart ? minuteOf(packStart) : null;
  const earliest = (plannedAt ?? 0) - WEEK;
  return farOffQuestion(tx, yard, { at: minuteOf(doneAt), plannedAt, earliest, since: order.takenAt });
};

/** What is asked first: was it done that day, is all there that it takes by the book? */
const questions = async (tx: Tx, yard: YardFile, plan: PlanFile, asking: Asking, { at, sure = [] }: PackRecord) => {
  const far = asked('day', sure, at ? await farOff(tx, yard, asking) : null);
  if (!far.ok) return far;
  const { id, lines } = asking.order;
  const { system } = await measuresOf(tx);
  const taken = goodsOfOrder(linesToTake({ order: id, lines }, yard), yard);
  return asked('short', sure, shortQuestion(yard, { taken, named: sticksFor(plan.sticks, id) }, system));
};

/** "Packed for School garden on Mon 12 Apr at 9:40, 2 days after the date given". */
const wordsOf = ({ name, when, minutes, daysLate, isWanted }: Packed): string => {
  const late = daysLate > 0 ? `, ${daysText(daysLate)} after the date ${isWanted ? 'wanted' : 'given'}` : '';
  return `Packed for ${name}${minutes === null ? '' : `, ${minutes} minutes of it`}${when}${late}`;
};

/** How a packing stands to the date of its order; a spell with others after it to none. */
const lateness = ({ promisedOn, wantedOn }: StoredOrder, day: string, minutes: number | null) => ({
  daysLate: minutes === null ? daysAfter({ due: promisedOn ?? undefined, wanted: wantedOn ?? undefined }, day) : 0,
  isWanted: promisedOn === null,
});

/** The pieces that are named, or else those by the plan. */
const piecesOf = async (tx: Tx, yard: YardFile, plan: PlanFile, id: string, named: readonly number[]) =>
  named.length === 0 ? done(plannedFor(plan, id)) : piecesTicked(await finishedPieces(tx), yard, id, named);

const plannedIn = ({ orders }: PlanOfWork, id: string) =>
  orders.find((order) => order.id === id && order.packStart !== undefined);

/**
 * An order is packed: its pieces, parts and cut lengths are out of stock, and it waits to be handed over. Of one that takes
 * several sessions a spell is, with the first of which all that leaves the stock, and the rest comes later. When the stock
 * book is short of pieces it is refused, unless the maker has counted; when it is short of parts the maker is asked.
 */
export const packOrder = (
  context: UseCaseContext,
  id: string,
  record: PackRecord,
): Promise<Outcome<Changed<Packed | null>>> => {
  const { evenShort, at, step, pieces = [] } = record;
  const names = [...(step ? [step] : []), packStep(id)];
  return orRecorded(context, { names, at, field: 'order' }, () =>
    recordingWork<Packed>(context, { kind: 'packed', words: wordsOf }, async (tx, yard, plan, toDo) => {
      const doneAt = writtenAt(at, { now: context.now, yard });
      if (!doneAt.ok) return doneAt;
      const found = await orderToPack(tx, id);
      if (!found.ok) return found;
      const left = yard.orders.find((order) => order.id === id);
      const minutesLeft = left ? packMinutesLeft(left, yard) : 0;
      const packing = packingOfStep(plannedIn(toDo, id), found.value, record, minutesLeft);
      if (!packing.ok) return packing;
      const asking = { order: found.value, doneAt: doneAt.value, packing: packing.value };
      const sure = await questions(tx, yard, plan, asking, record);
      if (!sure.ok) return sure;
      const { minutes } = packing.value;
      const planned = await piecesOf(tx, yard, plan, id, pieces);
      if (!planned.ok) return planned;
      const named = { planned: planned.value, named: pieces.length > 0 };
      const given = { order: id, lines: found.value.lines, evenShort, ...named };
      const work = { kind: 'packed' as const, ...given, ...(minutes && { minutes }), doneAt: doneAt.value };
      const recorded = recordedSteps(minutes === null || !step ? [packStep(id)] : [step], work, yard);
      const when = earlierWords(doneAt.value, today(yard.yard.timeZone, context.now));
      const steps = [{ answers: step ?? undefined, work: () => done(work) }];
      const late = lateness(found.value, today(yard.yard.timeZone, doneAt.value), minutes);
      return done({ steps, value: { name: orderName(found.value), when, minutes, ...late }, named: recorded });
    }),
  );
};
