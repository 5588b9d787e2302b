import { NEVER, NONE } from '../decoder/problem.ts';
import { completesUnder, type Earliest, type Guard, NOWHERE, soonerUnder } from './completes-under.ts';
import { type Asking, type Present, withOrderAt } from './present.ts';

/** Shifts tried by doubling, one after another until one fits; and then by halving the last step. */
const MOST_DOUBLED = 12;

/** Shifts from the first one on, each twice as far as the one before, and the one after all that is planned. */
const doubled = (last: number): number[] => {
  const shifts = [0];
  for (let step = 1; step < last && shifts.length < MOST_DOUBLED; step *= 2) shifts.push(step);
  return last > 0 ? [...shifts, last] : shifts;
};

/**
 * The earliest completion with the new order last, nothing poured for it before a shift: tried further and further out,
 * and then closer to the last shift that would not do. What is held back already stays so.
 */
export const earliestBehind = (asking: Asking, present: Present, guard: Guard): Earliest => {
  const { problem, added } = asking;
  const last = withOrderAt(present, present.dispatch.sequence.length, added);
  let best = NOWHERE;
  const fitsBehind = (shift: number): boolean => {
    const dispatch = { ...last, heldBack: [...(present.dispatch.heldBack ?? []), { order: added, shift }] };
    const completesAt = completesUnder(asking, dispatch, present, guard);
    if (completesAt < best.completesAt) best = { completesAt, dispatch };
    return completesAt < NEVER;
  };
  const most = Math.min(present.done, problem.shifts.count - 1);
  if (most < 0) return best;
  let low = 0;
  let high: number = NONE;
  for (const shift of doubled(most)) {
    if (fitsBehind(shift)) {
      high = shift;
      break;
    }
    low = shift + 1;
  }
  while (low < high) {
    const middle = (low + high) >> 1;
    if (fitsBehind(middle)) high = middle;
    else low = middle + 1;
  }
  return best;
};

/** Shifts from which on the others are gone on with, tried in turn. */
const HELD_FOR = [1, 2, 4, 8, 16, 32];

/** Orders without a date given: all of them, and those that are late for the date asked for. */
const withoutDate = (asking: Asking, present: Present): number[][] => {
  const { orders } = asking.problem;
  const all = Array.from(present.dispatch.sequence).filter(
    (o) => orders[o]!.dueDay >= NEVER && present.leftOut[o] !== 1,
  );
  const late = all.filter((o) => present.daysAfterAim[o]! > 0);
  return [late, all].filter((list, i, lists) => list.length > 0 && (i === 0 || list.length > lists[0]!.length));
};

/** The earliest completion with several orders held back at once, none of which was given a date; sooner than `best`, or that. */
export const earliestBefore = (asking: Asking, present: Present, best: Earliest): Earliest => {
  let earliest = best;
  const first = withOrderAt(present, present.dispatch.sequence.length, asking.added);
  for (const held of withoutDate(asking, present))
    for (const shift of HELD_FOR) {
      if (shift >= asking.problem.shifts.count) break;
      const others = (present.dispatch.heldBack ?? []).filter(({ order }) => !held.includes(order));
      const dispatch = { ...first, heldBack: [...others, ...held.map((order) => ({ order, shift }))] };
      earliest = soonerUnder(asking, dispatch, present, 'given', earliest);
    }
  return earliest;
};
