import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { Deal } from '../decoder/deal.ts';
import { Dealing, dealPieces, type Needing } from '../decoder/deal-pieces.ts';
import { dealPours } from '../decoder/deal-pours.ts';
import type { DecoderState } from '../decoder/decoder-state.ts';
import type { Problem } from '../decoder/problem.ts';

/** The orders of a plan that are still to be made here, the one that needs its pieces soonest first. */
const needing = ({ orders, yard, begun }: Problem, near: PlanFile): Needing[] => {
  const packed = new Map(near.orders.map(({ id, packStart, completesAt }) => [id, minuteOf(packStart ?? completesAt)]));
  const underWay = new Set(begun.packs.map(({ order }) => order));
  return orders
    .flatMap(({ pieces }, order): Needing[] => {
      const by = packed.get(yard.orders[order]!.id);
      if (by === undefined || underWay.has(order)) return [];
      return [{ order, by, left: new Map(pieces.map(({ casting, count }) => [casting, count])) }];
    })
    .sort((a, b) => a.by - b.by);
};

/**
 * Who gets what as the plan that stands had it, in the yard as it is now: pours that are still to come go to whom they
 * were for; of what was poured or finished since, every order gets pieces that are ready when it needs them, as far as
 * there are any. Which of these pieces it had does not matter to it. One that is not packed has its parts when it had them.
 */
export const standingDeal = (state: DecoderState, near: PlanFile): Deal => {
  const { problem } = state;
  const orders = needing(problem, near);
  const dealing = new Dealing(problem, orders);
  dealPours(dealing, state, orders);
  dealPieces(dealing, state, orders);
  return dealing;
};
