import type { Deal, Had } from './deal.ts';
import { dealToPacks } from './deal-to-packs.ts';
import type { DecoderState } from './decoder-state.ts';
import type { FixedPour } from './fixed-batch.ts';
import { giveFromLot } from './give-from-lot.ts';
import { NONE } from './problem.ts';

const NOTHING: Had = { lots: 0, inMoulds: 0, pours: 0 };

/** Whether an order is one of those that pieces are dealt to: not left out, and not being packed already. */
const isDealtTo = ({ orders }: DecoderState, order: number): boolean =>
  orders.excluded[order] === 0 && orders.completesAt[order] === NONE;

/** What is dealt before anybody else is asked: as the plan that stands had it, or else what orders with a fixed packing need. */
const dealOf = (state: DecoderState): Deal | null =>
  state.dispatch.deal ?? (state.problem.isStanding ? null : dealToPacks(state));

/** What an order has of a casting before anybody else is asked. */
export const hadOf = (state: DecoderState, order: number, casting: number): Had =>
  dealOf(state)?.had.get(order)?.get(casting) ?? NOTHING;

/** Gives out what is there, finished or in moulds; those who are left out get nothing. */
export const dealAsStood = (state: DecoderState): void => {
  const deal = dealOf(state);
  if (!deal) return;
  const { moulds, problem } = state;
  for (const { lot, order, count } of deal.lots) if (isDealtTo(state, order)) giveFromLot(state, lot, order, count);
  for (const { piece, order } of deal.pieces)
    if (isDealtTo(state, order)) moulds.heldOrder[problem.inMould[piece]!.mould] = order;
};

/** Whose a fixed pour is, which is then poured for it; undefined where anybody may have it. */
export const takeAsStood = (state: DecoderState, pour: FixedPour): number | undefined => {
  const order = dealOf(state)?.pours.get(pour);
  if (order === undefined || !isDealtTo(state, order)) return undefined;
  state.orders.unpoured[order] = state.orders.unpoured[order]! - 1;
  return order;
};
