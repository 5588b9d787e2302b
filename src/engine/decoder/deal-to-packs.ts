import type { Deal } from './deal.ts';
import { Dealing, dealPieces, type Needing } from './deal-pieces.ts';
import { dealPours } from './deal-pours.ts';
import type { DecoderState } from './decoder-state.ts';
import { NONE, type Problem } from './problem.ts';

/** Orders whose packing is fixed, the one that is packed first before the others. */
const packedAsFixed = ({ orders, fixed, begun }: Problem): Needing[] => {
  const known = new Set(begun.packs.map(({ order }) => order));
  return fixed.packs.flatMap(({ order, start }): Needing[] => {
    if (order === NONE || known.has(order)) return [];
    known.add(order);
    const left = new Map(orders[order]!.pieces.map(({ casting, count }) => [casting, count]));
    return [{ order, by: start, left }];
  });
};

const deals = new WeakMap<Problem, Deal | null>();

/**
 * Fixed pours that are meant for orders whose packing is fixed go to them, and of what is there what is ready by then, before
 * anybody else is asked: else another one of the sequence takes the pieces, and what is fixed cannot stay. Null where nothing is packed at a fixed time.
 */
export const dealToPacks = (state: DecoderState): Deal | null => {
  const { problem } = state;
  const known = deals.get(problem);
  if (known !== undefined) return known;
  const orders = packedAsFixed(problem);
  const dealing = orders.length > 0 ? new Dealing(problem, []) : null;
  if (dealing) {
    dealPours(dealing, state, orders);
    dealPieces(dealing, state, orders);
  }
  deals.set(problem, dealing);
  return dealing;
};
