import { NEVER } from '../decoder/problem.ts';
import { completesUnder, type Earliest } from './completes-under.ts';
import { earliestOf } from './earliest.ts';
import { type Asking, keepingInHand, type Present } from './present.ts';

/** Asked beside the question for the earliest day, with so much of its search. */
const SHARE = 0.5;
const MOST_PLACES = 20;

/**
 * The earliest completion in a plan that leaves the other orders the sessions they have in hand before the dates they were
 * given: `earliest` itself where it does, or what is found with half of its search. Sessions in hand are there for mishaps; an
 * order that takes them from the others has nobody's date safe but its own. `earliest` too where no such plan is found.
 */
export const carefulOf = (asking: Asking, present: Present, earliest: Earliest): Earliest => {
  const careful = keepingInHand(present);
  if (!earliest.dispatch || careful.until.every((minute) => minute >= NEVER)) return earliest;
  const same = completesUnder(asking, earliest.dispatch, careful, 'given');
  if (same <= earliest.completesAt) return earliest;
  const found = earliestOf(asking, careful, MOST_PLACES, { share: SHARE });
  return found.completesAt < NEVER ? found : earliest;
};
