import { NEVER } from '../decoder/problem.ts';
import type { InYard } from '../exact/in-yard.ts';
import { completesUnder, type Earliest, NOWHERE } from './completes-under.ts';
import { earliestBeside } from './earliest.ts';
import { exactlyBefore } from './exactly.ts';
import { type Asking, keepingInHand, type Present } from './present.ts';
import { promiseDay } from './promise.ts';

/** When an order could be ready, in which yard and beside which plan. */
export interface Answer {
  asking: Asking;
  present: Present;
  /** Without a dispatch where the plan was found by looking through all ways. */
  earliest: Earliest;
  found?: InYard;
}

/**
 * The earliest completion in a plan that leaves the other orders the sessions they have in hand before the dates they were
 * given: `earliest` itself where it does, or what is found with half of its search. Sessions in hand are there for mishaps; an
 * order that takes them from the others has nobody's date safe but its own. Null where no such plan is found.
 */
export const carefulOf = ({ asking, present, earliest }: Answer): Earliest | null => {
  const careful = keepingInHand(present);
  if (!earliest.dispatch || careful.until.every((minute) => minute >= NEVER)) return earliest;
  const same = completesUnder(asking, earliest.dispatch, careful, 'given');
  if (same <= earliest.completesAt) return earliest;
  const found = earliestBeside(asking, careful);
  return found.completesAt < NEVER ? found : null;
};

/**
 * The earliest careful answer of a search: with all of the plan that stands kept, where that is as early as any, or else the
 * earlier of that and another. Never complete where neither is careful.
 */
const searchedCarefully = (asked: Answer, stood: Answer | null): Answer => {
  const kept = stood && { ...stood, earliest: carefulOf(stood) ?? NOWHERE };
  if (kept && kept.earliest.completesAt <= asked.earliest.completesAt) return kept;
  const free = { ...asked, earliest: carefulOf(asked) ?? NOWHERE };
  return kept && kept.earliest.completesAt < free.earliest.completesAt ? kept : free;
};

/** On small yards a careful answer for which an earlier day can be promised, out of all ways there are; else the one given. */
const lookedThrough = (known: Answer, { asking, present }: Answer, earliestAt: number): Answer => {
  const { problem } = asking;
  const { completesAt } = known.earliest;
  const [day, soonest] = [completesAt, earliestAt].map((at) => (at < NEVER ? promiseDay(problem, at) : null));
  if (day !== null && day === soonest) return known;
  const { found, completesAt: sooner } = exactlyBefore(asking, keepingInHand(present), completesAt);
  return found ? { asking, present, earliest: { completesAt: sooner, dispatch: null }, found } : known;
};

/** What a question came to: by a search, with all of the plan that stands kept, and with all ways looked through. */
interface Asked {
  tried: Answer;
  stood: Answer | null;
  /** The earliest of all. */
  earliest: Answer;
}

/** The earliest careful answer, by a search and on small yards by all ways there are; the earliest where none is careful. */
export const carefulAnswer = ({ tried, stood, earliest }: Asked): Answer => {
  const careful = lookedThrough(searchedCarefully(tried, stood), tried, earliest.earliest.completesAt);
  return careful.earliest.completesAt < NEVER ? careful : earliest;
};
