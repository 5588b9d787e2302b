import type { Order } from '../../../shared/order.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { bestOf } from './enumerate.ts';
import { dayOf, daysLate, handoverOn, instantOf, NEVER, type Tiny, type TinyOrder, tinyOf } from './tiny.ts';

/** How an order stands in the plan that is asked beside: days late, and the minute it is complete. */
export interface Standing {
  daysLate: number;
  completesAt: number;
}

/** More mortar than is ever used: only time is asked about. */
const PLENTY = 10_000;

/** Sessions that allow batches and begin at or after a minute. */
const sessionsAfter = ({ sessions }: Tiny, minute: number): Tiny['sessions'] =>
  sessions.filter(({ from, allows }) => from >= minute && allows.includes('batch'));

/** Sessions that an order complete at a minute has in hand before its date, as many as the yard keeps at the most. */
const inHand = (tiny: Tiny, { dueDay }: TinyOrder, minute: number): number => {
  const before = sessionsAfter(tiny, minute).filter(({ end }) => handoverOn(tiny, end) <= dueDay);
  return Math.min(tiny.yard.yard.sessionsInHand, before.length);
};

/** The hand-over day once the yard's sessions in hand have passed since a minute; NEVER beyond the horizon. */
const dayInHand = (tiny: Tiny, minute: number): number => {
  const { sessionsInHand, horizonDays } = tiny.yard.yard;
  if (sessionsInHand === 0) return handoverOn(tiny, minute);
  const last = sessionsAfter(tiny, minute)[sessionsInHand - 1];
  return last && dayOf(last.end) <= tiny.today + horizonDays ? handoverOn(tiny, last.end) : NEVER;
};

/** The yard at a minute with nothing but an order to make, of which one piece is lacking. */
const lackingOne = (yard: YardFile, asked: Order, minute: number): Tiny => {
  const alone = { ...yard, yard: { ...yard.yard, now: instantOf(minute) }, orders: [asked], inMould: [] };
  const { needs } = tinyOf(alone).orders[0]!;
  const casting = needs.findIndex((count) => count > 0);
  const finished = [{ casting: yard.castings[casting]!.id, count: needs[casting]! - 1 }].filter(
    ({ count }) => count > 0,
  );
  const materials = yard.materials.map((one) => ({ ...one, onHand: PLENTY }));
  return tinyOf({ ...alone, finished, materials });
};

/** The day on which an order of one casting could be handed over if a piece of it that is stripped at a minute were scrap. */
const daysCastAgain = (tiny: Tiny, asked: Order): ((minute: number) => number) => {
  const known = new Map<number, number>();
  return (minute) => {
    if (minute <= tiny.now) return 0;
    const day =
      known.get(minute) ?? handoverOn(tiny, bestOf(lackingOne(tiny.yard, asked, minute), ([at]) => at!).worth);
    known.set(minute, day);
    return day;
  };
};

/**
 * The minutes at which others may be complete: no order with more days late, and in a careful plan none with fewer sessions in
 * hand before its date, than in the plan that stands.
 */
const keeps = (tiny: Tiny, standing: readonly Standing[], isCareful: boolean) => {
  const had = standing.map(({ completesAt }, o) => inHand(tiny, tiny.orders[o]!, completesAt));
  return (completesAt: readonly number[]): boolean =>
    standing.every((stands, o) => {
      const [order, at] = [tiny.orders[o]!, completesAt[o]!];
      return daysLate(tiny, order, at) <= stands.daysLate && (!isCareful || inHand(tiny, order, at) >= had[o]!);
    });
};

/**
 * The day to promise for an order that comes last in a tiny yard, by the words of the contract. Of all plans in which no other
 * order has more days late, or fewer sessions in hand before its date, than in the plan that stands, the one in which the order
 * is complete soonest (of several the one in which its last piece is stripped soonest); where there is none, of all plans in
 * which nobody is later. The day is the first hand-over day once the sessions in hand have passed since it is complete; with any
 * in hand no earlier than it could be if its last piece were scrap, and cast again in a yard where nothing else is in the way.
 * NEVER where there is no plan at all.
 */
export const exactPromise = (tiny: Tiny, asked: Order, standing: readonly Standing[]): number => {
  for (const isCareful of [true, false]) {
    const isKept = keeps(tiny, standing, isCareful);
    const soonest = bestOf(tiny, (at) => (isKept(at) ? at.at(-1)! : Infinity)).worth;
    if (soonest >= NEVER) continue;
    const day = dayInHand(tiny, soonest);
    const again = daysCastAgain(tiny, asked);
    // Stripped no later than it is complete: where that is time enough, it need not be known when.
    if (tiny.yard.yard.sessionsInHand === 0 || again(soonest) <= day) return day;
    const atLeast = (minute: number) => Math.max(day, again(minute));
    const inTime = (at: readonly number[], strippedAt?: readonly number[]): number =>
      isKept(at) && at.at(-1)! <= soonest ? atLeast(strippedAt?.at(-1) ?? 0) : Infinity;
    return bestOf(tiny, inTime, atLeast).worth;
  }
  return NEVER;
};
