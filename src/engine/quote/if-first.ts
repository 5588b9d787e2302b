import type { Order } from '../../../shared/order.ts';
import { dateOfDay } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { soonestComplete } from '../bound/soonest.ts';
import { compile } from '../place/compile.ts';
import { decode } from '../place/decode.ts';
import { type Choices, type Dispatch, dispatchOf } from '../place/dispatch.ts';
import { type Placing, placingOf } from '../place/placing.ts';
import { NEVER, NONE } from '../place/problem.ts';
import { evaluate } from '../search/evaluation.ts';
import type { Found } from '../search/found.ts';
import { improvePlan } from '../search/improve.ts';
import { TRIED_CHOICES } from '../search/quick.ts';
import { randomFrom } from '../search/random.ts';
import type { Asking } from './present.ts';
import { handoverOn } from './promise.ts';

/** Pours placed in all by the search, about. */
const POURS_SEARCHED = 6_000;
const MOST_SEARCHED = 600;
/** So heavy that a day sooner is worth any number of batches. */
const WEIGHT = 1_000_000;

/**
 * The yard with the new order as if it were wanted today, more than anything: pieces that are ready sooner then count
 * before its day moves.
 */
const urgent = (yard: YardFile, order: Order, { problem }: Asking): Placing => {
  const wanted = { ...order, due: dateOfDay(problem.today), weight: WEIGHT };
  return placingOf(compile({ ...yard, orders: [...yard.orders, wanted] }), dispatchOf(new Int32Array(0)));
};

/** Choices to start from: those of quick planning, and the same with each mould in turn left alone, as if it were not there. */
const startChoices = ({ problem }: Placing, order: number): Partial<Choices>[] => {
  const moulds = new Set(problem.orders[order]!.pieces.flatMap(({ casting }) => problem.castings[casting]!.moulds));
  return [NONE, ...moulds].flatMap((restMould) => TRIED_CHOICES.map((choices) => ({ ...choices, restMould })));
};

/**
 * Earliest minute at which a new order can be complete when it goes before all others: every mould, hour, bag and rack
 * space that is neither firm nor set aside is there for it alone, and the others take what is left. On the right day, not
 * always at the earliest minute of it: the first of several plans on a day that no plan can beat (`soonestComplete`), or the
 * best of them and of a search of a counted length. NEVER when it cannot be made within the horizon.
 */
export const completesIfFirst = (yard: YardFile, order: Order, asking: Asking): number => {
  const at = urgent(yard, order, asking);
  const { added } = asking;
  let best: Found | null = null;
  let completesAt = NEVER;
  const consider = (dispatch: Dispatch): void => {
    decode(at, dispatch);
    if (at.orders.completesAt[added] === NONE || at.orders.completesAt[added]! >= completesAt) return;
    completesAt = at.orders.completesAt[added]!;
    best = { dispatch, evaluation: evaluate(at), kept: 0 };
  };
  const pieces = Math.max(1, at.problem.orders[added]!.pieceCount);
  const most = Math.max(TRIED_CHOICES.length, Math.floor(POURS_SEARCHED / pieces));
  const soonest = soonestComplete(at.problem, added);
  if (soonest >= at.problem.horizonEnd) return NEVER;
  const soonestDay = handoverOn(at.problem, soonest);
  const isSoonest = () => completesAt < NEVER && handoverOn(at.problem, completesAt) <= soonestDay;
  for (const choices of startChoices(at, added).slice(0, most)) {
    consider(dispatchOf(Int32Array.of(added), choices));
    if (isSoonest()) return completesAt;
  }
  if (!best) return NEVER;
  const plans = Math.min(MOST_SEARCHED, Math.floor(POURS_SEARCHED / pieces));
  consider(improvePlan(at, best, { plans, polishing: 0, coarse: 0 }, randomFrom(1)).dispatch);
  return completesAt;
};
