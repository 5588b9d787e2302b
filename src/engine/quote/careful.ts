import { NEVER } from '../decoder/problem.ts';
import { completesUnder, type Earliest, NOWHERE } from './completes-under.ts';
import { earliestBeside } from './earliest.ts';
import { type Asking, keepingInHand, type Present } from './present.ts';

/** When an order could be ready, in which yard and beside which plan. */
export interface Answer {
  asking: Asking;
  present: Present;
  earliest: Earliest;
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
 * The earliest careful answer: with all of the plan that stands kept, where that is as early as any, or else the earlier of
 * that and another; what was asked about itself where neither is careful.
 */
export const carefulAnswer = (asked: Answer, stood: Answer | null): Answer => {
  const kept = stood && { ...stood, earliest: carefulOf(stood) ?? NOWHERE };
  if (kept && kept.earliest.completesAt <= asked.earliest.completesAt) return kept;
  const free = { ...asked, earliest: carefulOf(asked) ?? NOWHERE };
  const best = kept && kept.earliest.completesAt < free.earliest.completesAt ? kept : free;
  return best.earliest.completesAt < NEVER ? best : asked;
};
