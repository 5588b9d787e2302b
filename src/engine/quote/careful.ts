import type { Order } from '../../../shared/order.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { NEVER } from '../decoder/problem.ts';
import type { Answer } from './answer.ts';
import { completesUnder, type Earliest, NOWHERE } from './completes-under.ts';
import { dayInHand } from './day-in-hand.ts';
import { earliestBeside, type Longer } from './earliest.ts';
import { exactlyBefore } from './exactly.ts';
import { keepingInHand } from './present.ts';
import { promiseDay } from './promise.ts';

/**
 * The earliest completion in a plan that leaves the other orders the sessions they have in hand before the dates they were
 * given: `earliest` itself where it does, or what is found with half of its search. Sessions in hand are there for mishaps; an
 * order that takes them from the others has nobody's date safe but its own. Null where no such plan is found.
 */
export const carefulOf = ({ asking, present, earliest }: Answer, longer?: Longer): Earliest | null => {
  const careful = keepingInHand(present);
  if (!earliest.dispatch || careful.until.every((minute) => minute >= NEVER)) return earliest;
  const same = completesUnder(asking, earliest.dispatch, careful, 'given');
  if (same <= earliest.completesAt) return earliest;
  const found = earliestBeside(asking, careful, { longer });
  return found.completesAt < NEVER ? found : null;
};

/**
 * The earliest careful answer of a search: with all of the plan that stands kept, where that is as early as any, or else the
 * earlier of that and another. Never complete where neither is careful.
 */
const searchedCarefully = (asked: Answer, stood: Answer | null, longer: Longer | undefined): Answer => {
  const kept = stood && { ...stood, earliest: carefulOf(stood) ?? NOWHERE };
  if (kept && kept.earliest.completesAt <= asked.earliest.completesAt) return kept;
  const free = { ...asked, earliest: carefulOf(asked, longer) ?? NOWHERE };
  return kept && kept.earliest.completesAt < free.earliest.completesAt ? kept : free;
};

/** An answer, and the day with the sessions in hand after it. */
interface InHand {
  answer: Answer;
  day: number | null;
}

/** On small yards the soonest careful answer of all there are, where an earlier day than by the one known could be promised. */
const lookedThrough = (known: InHand, { asking, present }: Answer, earliestAt: number): Answer => {
  const { completesAt } = known.answer.earliest;
  const isSoonest =
    completesAt <= earliestAt || (known.day !== null && known.day === promiseDay(asking.problem, earliestAt));
  if (isSoonest) return known.answer;
  const { found, completesAt: sooner } = exactlyBefore(asking, keepingInHand(present), completesAt);
  return found ? { asking, present, earliest: { completesAt: sooner, dispatch: null }, found } : known.answer;
};

/** What a question came to: by a search, with all of the plan that stands kept, and with all ways looked through. */
export interface Asked {
  tried: Answer;
  stood: Answer | null;
  /** The earliest of all. */
  earliest: Answer;
}

/**
 * The earliest careful answer, by a search and on small yards by all ways there are, the earliest where none is careful; and
 * the day with the sessions in hand after it.
 */
export const carefulAnswer = (
  yard: YardFile,
  order: Order,
  { tried, stood, earliest }: Asked,
  longer?: Longer,
): InHand => {
  const inHand = (answer: Answer): InHand => ({ answer, day: dayInHand(yard, order, answer) });
  const known = inHand(searchedCarefully(tried, stood, longer));
  const careful = lookedThrough(known, tried, earliest.earliest.completesAt);
  if (careful.earliest.completesAt >= NEVER) return inHand(earliest);
  return careful === known.answer ? known : inHand(careful);
};
