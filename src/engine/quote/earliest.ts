import { soonestComplete } from '../bound/soonest.ts';
import { NEVER } from '../decoder/problem.ts';
import { poursOf } from '../search/effort.ts';
import { changeChoices, scopeOf } from '../search/moves/choices.ts';
import { waitingForLots } from '../search/quick.ts';
import { below, randomFrom } from '../search/random.ts';
import { earliestBefore, earliestBehind } from './behind.ts';
import { completesUnder, type Earliest } from './completes-under.ts';
import { earliestFromNothing, searchForPlace } from './from-nothing.ts';
import { type Asking, type Present, withOrderAt } from './present.ts';

/** Pours placed in all by the search around the places tried, about. */
const POURS_AROUND = 2_000;
const MOST_AROUND = 120;

/** Places in the sequence, so many at most, evenly spread. */
const earliestPlaced = (asking: Asking, present: Present, best: Earliest, mostPlaces: number): Earliest => {
  const { sequence } = present.dispatch;
  const step = Math.max(1, Math.ceil((sequence.length + 1) / mostPlaces));
  let earliest = best;
  for (let place = 0; place <= sequence.length; place += step) {
    const dispatch = withOrderAt(present, place, asking.added);
    const completesAt = completesUnder(asking, dispatch, present, 'aimed', earliest.completesAt);
    if (completesAt < earliest.completesAt) earliest = { completesAt, dispatch };
  }
  return earliest;
};

/** In front of all others and behind them, waiting for finished pieces that are not ready yet. */
const earliestWaiting = (asking: Asking, present: Present, best: Earliest): Earliest => {
  let earliest = best;
  const { sequence, choices } = present.dispatch;
  for (const more of waitingForLots(asking.problem))
    for (const place of [0, sequence.length]) {
      const dispatch = { ...withOrderAt(present, place, asking.added), choices: { ...choices, ...more } };
      const completesAt = completesUnder(asking, dispatch, present, 'aimed', earliest.completesAt);
      if (completesAt < earliest.completesAt) earliest = { completesAt, dispatch };
    }
  return earliest;
};

/** Tries other places together with other choices of the decoder's own; never later than `best`. */
const earliestAround = (asking: Asking, present: Present, best: Earliest, share: number): Earliest => {
  const { problem, added } = asking;
  const random = randomFrom(1);
  const { sequence, choices } = present.dispatch;
  const tries = Math.min(MOST_AROUND, Math.floor((POURS_AROUND * share) / poursOf(problem)));
  let [earliest, liked] = [best, choices];
  for (let i = 0; i < tries; i++) {
    const changed = changeChoices(i % 3 === 0 ? choices : liked, random, scopeOf(problem));
    const place = below(random, sequence.length + 1);
    const dispatch = { ...withOrderAt(present, place, added), choices: changed };
    const completesAt = completesUnder(asking, dispatch, present, 'aimed', earliest.completesAt);
    if (completesAt >= earliest.completesAt) continue;
    [earliest, liked] = [{ completesAt, dispatch }, changed];
  }
  return earliest;
};

/** So many minutes after the order could be complete all alone an answer counts as late. */
const A_WEEK = 7 * 1440;

const isLate = ({ problem, added }: Asking, { completesAt }: Earliest): boolean =>
  completesAt > soonestComplete(problem, added) + A_WEEK;

/**
 * Earliest minute at which the new order can be complete with no date later than at present: over places in the sequence,
 * `mostPlaces` of them evenly spread where there are more, behind all others from a shift on, and by a search around these
 * of a counted length, `share` of the usual. With `anew` also over plans from nothing, in which dates that were only asked
 * for may get later; and where the answer is late, or none, over plans in which orders are held back to whom no date was given. NEVER
 * when no plan that was tried has it within the horizon.
 */
export const earliestOf = (
  asking: Asking,
  present: Present,
  mostPlaces: number,
  { share = 1, anew: isAnew = true }: { share?: number; anew?: boolean } = {},
): Earliest => {
  const behind = earliestBehind(asking, present, 'aimed');
  const placed = earliestPlaced(asking, present, behind, mostPlaces);
  const waiting = earliestWaiting(asking, present, placed);
  const around = earliestAround(asking, present, waiting, share);
  if (!isAnew) return around;
  const anew = earliestFromNothing(asking, present, around);
  if (!isLate(asking, anew)) return anew;
  const before = earliestBefore(asking, present, anew);
  return before.completesAt < NEVER ? before : searchForPlace(asking, present);
};
