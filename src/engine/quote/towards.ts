import { soonestComplete } from '../bound/soonest.ts';
import { decode } from '../decoder/decode.ts';
import { decoderStateOf } from '../decoder/decoder-state.ts';
import { type Dispatch, dispatchOf } from '../decoder/dispatch.ts';
import { type CompiledOrder, NEVER, type Problem } from '../decoder/problem.ts';
import { poursOf } from '../search/effort.ts';
import { foundIn } from '../search/found.ts';
import { improvePlan } from '../search/improve.ts';
import { startSequences } from '../search/quick.ts';
import { randomFrom } from '../search/random.ts';
import { type Earliest, soonerUnder } from './completes-under.ts';
import { type Asking, type Present, withOrderAt } from './present.ts';
import { handoverOn } from './promise.ts';

/** Pours placed in all by one search, about, and plans at most; where that makes fewer plans than the least, there is none. */
const AT_ONCE = { pours: 60_000, plans: 4_000 };
/** The same where nobody waits for it: some seconds. */
const LONGER = { pours: 600_000, plans: 8_000 };
const LEAST_PLANS = 1_500;
const MOST_ROUNDS = 4;
/** Plans that one search starts from, at most: many short searches find more than a long one. */
const MOST_STARTS = 8;

/** The new order is wanted by a day, and nobody is ever late for the sake of it. */
const wantedOn = (order: CompiledOrder, day: number): CompiledOrder => ({
  ...order,
  dueDay: NEVER,
  wantedDay: day,
  aimDay: day,
});

const dueOn = (order: CompiledOrder, day: number): CompiledOrder => ({
  ...order,
  dueDay: day,
  wantedDay: NEVER,
  aimDay: day,
});

/** The problem with the new order wanted by a day, and all others due on the last day on which they may be handed over. */
const wantedBy = ({ problem, added }: Asking, present: Present, day: number): Problem => {
  const orders = problem.orders.map((order, o) => {
    if (o === added) return wantedOn(order, day);
    const limit = order.aimDay + present.daysAfterAim[o]!;
    return limit < NEVER ? dueOn(order, limit) : order;
  });
  const aimMinutes = Int32Array.from(orders, ({ aimDay }) =>
    aimDay >= NEVER ? NEVER : problem.calendar.midnightOf(aimDay + 1),
  );
  return { ...problem, orders, aimMinutes };
};

/** The best plan known, the present one with the new order in front, and sequences by the rules with it due on a day. */
const startsOf = (asking: Asking, present: Present, problem: Problem, best: Earliest, day: number): Dispatch[] => {
  const { added } = asking;
  const { setUp: _setUp, ...dispatch } = present.dispatch;
  const orders = problem.orders.map((order, o) => (o === added ? dueOn(order, day) : order));
  return [
    best.dispatch ?? withOrderAt(present, present.dispatch.sequence.length, added),
    withOrderAt(present, 0, added),
    ...startSequences({ ...problem, orders }).map((sequence) => ({ ...dispatch, sequence, inShift: new Map() })),
  ].slice(0, MOST_STARTS);
};

/** Searches from several plans for one that has the new order on an earlier day; the best of them is never later than `best`. */
const searchFor = (asking: Asking, present: Present, best: Earliest, soonest: number, search: Search): Earliest => {
  const problem = wantedBy(asking, present, soonest);
  const state = decoderStateOf(problem, dispatchOf(new Int32Array(0)));
  const day = handoverOn(problem, best.completesAt) - 1;
  const starts = startsOf(asking, present, problem, best, day);
  const stop = { plans: Math.ceil(search.plans / starts.length), polishing: 0, judged: 0 };
  let earliest = best;
  starts.forEach((start, i) => {
    state.orders.excluded.fill(0);
    state.orders.excluded.set(present.leftOut);
    decode(state, start);
    const seed = search.round * MOST_STARTS + i + 1;
    const { dispatch } = improvePlan(state, foundIn(state, start), stop, randomFrom(seed));
    for (const lotsUntil of new Set([dispatch.choices.lotsUntil, day])) {
      const tried = { ...dispatch, choices: { ...dispatch.choices, lotsUntil } };
      earliest = soonerUnder(asking, tried, present, 'aimed', earliest);
    }
  });
  return earliest;
};

/** Plans of one search, and which one in turn it is. */
interface Search {
  plans: number;
  round: number;
}

/**
 * Looks for an earlier hand-over day by search: the new order is wanted by the soonest day that there could be, all others are
 * due on the last day they may have, and whole plans are improved for a counted number of steps; again from each day found. On
 * small yards only, and not where no plan can be sooner (`soonestComplete`).
 */
export const earliestTowards = (asking: Asking, present: Present, best: Earliest, most = AT_ONCE): Earliest => {
  const { problem, added } = asking;
  const plans = Math.min(most.plans, Math.floor(most.pours / poursOf(problem)));
  if (plans < LEAST_PLANS || best.completesAt >= NEVER) return best;
  const soonest = handoverOn(problem, soonestComplete(problem, added));
  let earliest = best;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const day = handoverOn(problem, earliest.completesAt);
    if (day <= soonest) break;
    earliest = searchFor(asking, present, earliest, soonest, { plans, round });
    if (handoverOn(problem, earliest.completesAt) >= day) break;
  }
  return earliest;
};

/**
 * Whether a search ten times as long is one here: in larger yards it makes too few plans, and in tiny ones the search at once
 * makes as many as are of use (in none of 40 a longer one found anything).
 */
export const mayLookLonger = (problem: Problem): boolean => {
  const pours = poursOf(problem);
  return LONGER.pours / pours >= LEAST_PLANS && AT_ONCE.pours / pours < AT_ONCE.plans;
};

/** As `earliestTowards`, ten times as long; the way it found is marked. */
export const earliestAfterLong = (asking: Asking, present: Present, best: Earliest): Earliest => {
  if (!mayLookLonger(asking.problem)) return best;
  const found = earliestTowards(asking, present, best, LONGER);
  return found === best ? best : { ...found, longer: found.dispatch };
};
