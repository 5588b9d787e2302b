import { soonestComplete } from '../bound/soonest.ts';
import type { Dispatch } from '../decoder/dispatch.ts';
import { NEVER } from '../decoder/problem.ts';
import { poursOf } from '../search/effort.ts';
import { leftOutLast } from '../search/left-out.ts';
import { changeChoices, scopeOf } from '../search/moves/choices.ts';
import { waitingForLots } from '../search/quick.ts';
import { below, randomFrom } from '../search/random.ts';
import { earliestBefore, earliestBehind } from './behind.ts';
import { type Earliest, soonerUnder } from './completes-under.ts';
import { earliestFromNothing, searchForPlace } from './from-nothing.ts';
import { type Asking, movedLast, type Present, withOrderAt } from './present.ts';
import { earliestAfterLong, earliestTowards } from './towards.ts';

/** Pours placed in all by the search around the places tried, about. */
const POURS_AROUND = 2_000;
const MOST_AROUND = 120;
/** And by the tries in the place of another order. */
const POURS_MOVED = 2_000;

/** Places in the sequence, so many at most, evenly spread. */
const earliestPlaced = (asking: Asking, present: Present, best: Earliest, mostPlaces: number): Earliest => {
  const { sequence } = present.dispatch;
  const step = Math.max(1, Math.ceil((sequence.length + 1) / mostPlaces));
  let earliest = best;
  for (let place = 0; place <= sequence.length; place += step) {
    earliest = soonerUnder(asking, withOrderAt(present, place, asking.added), present, 'aimed', earliest);
  }
  return earliest;
};

/** The same, where the present plan has choices for single shifts also without them: with one more order shifts differ. */
const earliestPlacedAnew = (asking: Asking, present: Present, best: Earliest, mostPlaces: number): Earliest => {
  const placed = earliestPlaced(asking, present, best, mostPlaces);
  const { dispatch } = present;
  if (dispatch.inShift.size === 0) return placed;
  const plain = { ...present, dispatch: { ...dispatch, inShift: new Map() } };
  return earliestPlaced(asking, plain, placed, mostPlaces);
};

/**
 * In the place of each other order in turn, which comes last: it is moved as far as its date allows. Of the orders so many at
 * most, those that come first.
 */
const earliestInPlace = (asking: Asking, present: Present, best: Earliest, mostPlaces: number): Earliest => {
  const { dispatch, leftOut } = present;
  let earliest = best;
  const planned = Array.from(dispatch.sequence).filter((o) => leftOut[o] !== 1);
  const most = Math.min(mostPlaces, Math.floor(POURS_MOVED / poursOf(asking.problem)));
  for (const moved of planned.slice(0, most))
    earliest = soonerUnder(asking, movedLast(present, moved, asking.added), present, 'aimed', earliest);
  return earliest;
};

/** In front of all others and behind them, waiting for finished pieces that are not ready yet. */
const earliestWaiting = (asking: Asking, present: Present, best: Earliest): Earliest => {
  let earliest = best;
  const { sequence, choices } = present.dispatch;
  for (const more of waitingForLots(asking.problem))
    for (const place of [0, sequence.length]) {
      const dispatch = { ...withOrderAt(present, place, asking.added), choices: { ...choices, ...more } };
      earliest = soonerUnder(asking, dispatch, present, 'aimed', earliest);
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
    const sooner = soonerUnder(asking, dispatch, present, 'aimed', earliest);
    if (sooner !== earliest) [earliest, liked] = [sooner, changed];
  }
  return earliest;
};

/** So many minutes after the order could be complete all alone an answer counts as late. */
const A_WEEK = 7 * 1440;

const isLate = ({ problem, added }: Asking, { completesAt }: Earliest): boolean =>
  completesAt > soonestComplete(problem, added) + A_WEEK;

/** How much of the search there is, 1 for all of it, and whether plans from nothing count. */
interface EarliestOptions {
  share?: number;
  anew?: boolean;
  /** Also a search for which nobody waits, or the way that one found before. */
  longer?: Longer | undefined;
}

/** A longer search that is still to be made, or what it found; null where that was nothing. */
export type Longer = 'look' | { found: Dispatch | null };

const afterLonger = (asking: Asking, present: Present, best: Earliest, longer: Longer | undefined): Earliest => {
  if (longer === undefined) return best;
  if (longer === 'look') return earliestAfterLong(asking, present, best);
  if (!longer.found) return best;
  const found = soonerUnder(asking, longer.found, present, 'aimed', best);
  return found === best ? best : { ...found, longer: longer.found };
};

const soonestOf = (
  asking: Asking,
  present: Present,
  mostPlaces: number,
  { share = 1, anew: isAnew = true, longer }: EarliestOptions,
): Earliest => {
  const behind = earliestBehind(asking, present, 'aimed');
  const placed = earliestPlacedAnew(asking, present, behind, mostPlaces);
  // Where many questions are asked at once a smaller share of the search has to do.
  const isOneOfMany = share < 1;
  const inPlace = isOneOfMany ? placed : earliestInPlace(asking, present, placed, mostPlaces);
  const waiting = earliestWaiting(asking, present, inPlace);
  const around = earliestAround(asking, present, waiting, share);
  const nothing = isAnew ? earliestFromNothing(asking, present, around) : around;
  const towards = isOneOfMany ? nothing : earliestTowards(asking, present, nothing);
  const anew = afterLonger(asking, present, towards, longer);
  if (!isAnew) return anew;
  if (!isLate(asking, anew)) return anew;
  const before = earliestBefore(asking, present, anew);
  return before.completesAt < NEVER ? before : searchForPlace(asking, present);
};

/**
 * A dispatch as it is to be planned by once the order is taken, with a date of its own: the same orders are left out, and the
 * new one gets the pieces that it got without a date.
 */
const asTaken = ({ problem, added }: Asking, { leftOut }: Present, dispatch: Dispatch): Dispatch => {
  const last = leftOutLast(leftOut, dispatch);
  if (problem.there.lateLots.length === 0) return last;
  return { ...last, pourFirst: [...(last.pourFirst ?? []), added] };
};

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
  options: EarliestOptions = {},
): Earliest => {
  const { dispatch, ...found } = soonestOf(asking, present, mostPlaces, options);
  return { ...found, dispatch: dispatch && asTaken(asking, present, dispatch) };
};

/** As `earliestOf`, with half of its search, for a question that is asked beside the one for the earliest day. */
export const earliestBeside = (
  asking: Asking,
  present: Present,
  options: Pick<EarliestOptions, 'anew' | 'longer'> = {},
): Earliest => earliestOf(asking, present, 20, { share: 0.5, ...options });
