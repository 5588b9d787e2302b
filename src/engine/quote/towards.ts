import { soonestComplete } from '../bound/soonest.ts';
import { decode } from '../decoder/decode.ts';
import { decoderStateOf } from '../decoder/decoder-state.ts';
import { type Dispatch, dispatchOf } from '../decoder/dispatch.ts';
import { type CompiledOrder, NEVER, type Problem } from '../decoder/problem.ts';
import { poursOf } from '../search/effort.ts';
import { foundIn } from '../search/found.ts';
import { improvePlan } from '../search/improve.ts';
import { randomFrom } from '../search/random.ts';
import { type Earliest, soonerUnder } from './completes-under.ts';
import { type Asking, type Present, withOrderAt } from './present.ts';
import { handoverOn } from './promise.ts';

/** Pours placed in all by one search, about; where that makes fewer plans than the least, there is none. */
const POURS_TOWARDS = 2_400;
const MOST_PLANS = 240;
const LEAST_PLANS = 60;
const MOST_ROUNDS = 4;
/** A day late is bad, but not so bad that the search would never pass through it. */
const WEIGHT = 3;

const dueOn = (order: CompiledOrder, day: number): CompiledOrder => ({
  ...order,
  weight: WEIGHT,
  dueDay: day,
  wantedDay: NEVER,
  aimDay: day,
});

/** The problem with the new order due on a day, and all others on the last day on which they may be handed over. */
const dueBy = ({ problem, added }: Asking, present: Present, day: number): Problem => {
  const orders = problem.orders.map((order, o) => {
    if (o === added) return dueOn(order, day);
    const limit = order.aimDay + present.daysAfterAim[o]!;
    return limit < NEVER ? dueOn(order, limit) : order;
  });
  const aimMinutes = Int32Array.from(orders, ({ aimDay }) =>
    aimDay >= NEVER ? NEVER : problem.calendar.midnightOf(aimDay + 1),
  );
  return { ...problem, orders, aimMinutes };
};

/** Searches from several plans for one that has the new order by a day; the best of them is never later than `best`. */
const searchFor = (asking: Asking, present: Present, best: Earliest, day: number, plans: number): Earliest => {
  const { added } = asking;
  const state = decoderStateOf(dueBy(asking, present, day), dispatchOf(new Int32Array(0)));
  const last = withOrderAt(present, present.dispatch.sequence.length, added);
  const starts: Dispatch[] = [best.dispatch ?? last, withOrderAt(present, 0, added)];
  const stop = { plans: Math.ceil(plans / starts.length), polishing: 0, judged: 0 };
  let earliest = best;
  starts.forEach((start, i) => {
    state.orders.excluded.fill(0);
    state.orders.excluded.set(present.leftOut);
    decode(state, start);
    const { dispatch } = improvePlan(state, foundIn(state, start), stop, randomFrom(i + 1));
    for (const lotsUntil of new Set([dispatch.choices.lotsUntil, day])) {
      const tried = { ...dispatch, choices: { ...dispatch.choices, lotsUntil } };
      earliest = soonerUnder(asking, tried, present, 'aimed', earliest);
    }
  });
  return earliest;
};

/**
 * Looks for an earlier hand-over day by search: the new order is due the day before the earliest one known, all others on the
 * last day they may have, and whole plans are improved for a counted number of steps; again from each day found. On small
 * yards only, and not where no plan can be sooner (`soonestComplete`).
 */
export const earliestTowards = (asking: Asking, present: Present, best: Earliest): Earliest => {
  const { problem, added } = asking;
  const plans = Math.min(MOST_PLANS, Math.floor(POURS_TOWARDS / poursOf(problem)));
  if (plans < LEAST_PLANS || best.completesAt >= NEVER) return best;
  const soonest = handoverOn(problem, soonestComplete(problem, added));
  let earliest = best;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const day = handoverOn(problem, earliest.completesAt);
    if (day <= soonest) break;
    earliest = searchFor(asking, present, earliest, day - 1, plans);
    if (handoverOn(problem, earliest.completesAt) >= day) break;
  }
  return earliest;
};
