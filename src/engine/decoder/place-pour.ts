import { curedAt, outAt } from '../book/curing-times.ts';
import { turnsAfterPour } from '../book/mould-state.ts';
import type { DecoderState } from './decoder-state.ts';
import { queueHead, wantedHead } from './holds.ts';
import { NONE } from './problem.ts';

/** The first entry from one on, before an end, that has any left; the end where none has. */
export const firstLeft = (left: Int32Array, from: number, end: number): number => {
  let i = from;
  while (i < end && left[i] === 0) i++;
  return i;
};

/**
 * Takes the order that the next piece of a casting is for out of its queue; NONE, for stock, where nobody needs one, or where
 * no session takes it out of its mould.
 */
export const nextOrder = (state: DecoderState, casting: number, outAt: number, batchStart: number): number => {
  const { demand, orders } = state;
  if (demand.need[casting] === 0 || outAt > state.lastStrip[casting]!) return NONE;
  const head = queueHead(state, casting, batchStart);
  if (head === demand.end[casting]) return NONE;
  const order = demand.order[head]!;
  demand.need[casting] = demand.need[casting]! - 1;
  demand.total--;
  demand.left[head] = demand.left[head]! - 1;
  demand.head[casting] = firstLeft(demand.left, demand.head[casting]!, demand.end[casting]!);
  const wanted = wantedHead(state, casting);
  demand.wantedLeft[wanted] = demand.wantedLeft[wanted]! - 1;
  demand.wantedHead[casting] = firstLeft(demand.wantedLeft, demand.wantedHead[casting]!, demand.wantedEnd[casting]!);
  orders.unpoured[order] = orders.unpoured[order]! - 1;
  return order;
};

const addPour = (
  state: DecoderState,
  mould: number,
  casting: number,
  batch: number,
  fillStart: number,
  order: number,
): number => {
  const { moulds, placed } = state;
  const pour = placed.pours++;
  const asIs = moulds.prepStart[mould] === NONE;
  placed.pourBatch[pour] = batch;
  placed.pourMould[pour] = mould;
  placed.pourCasting[pour] = casting;
  placed.pourOrder[pour] = order;
  placed.pourPrepStart[pour] = asIs ? placed.batchStart[batch]! : moulds.prepStart[mould]!;
  placed.pourPrepEnd[pour] = asIs ? placed.batchStart[batch]! : moulds.prepEnd[mould]!;
  placed.pourCoatStart[pour] = moulds.coatStart[mould]!;
  placed.pourCoatEnd[pour] = moulds.coatEnd[mould]!;
  placed.pourFillStart[pour] = fillStart;
  placed.pourFillEnd[pour] = fillStart + state.problem.castings[casting]!.fillMinutes;
  placed.pourStripStart[pour] = NONE;
  return pour;
};

/**
 * Fills a mould that is set up: the piece goes to the first order that needs one, or to the one it is dealt to already, and the
 * mould holds it from now on.
 */
export const placePour = (
  state: DecoderState,
  mould: number,
  casting: number,
  batch: number,
  fillStart: number,
  dealtTo?: number,
): void => {
  const { moulds, demand, problem } = state;
  const { mix, fillMinutes } = problem.castings[casting]!;
  const setting = problem.mixes[mix]!;
  const out = outAt(setting, fillStart + fillMinutes);
  const order = dealtTo ?? nextOrder(state, casting, out, state.placed.batchStart[batch]!);
  const pour = addPour(state, mould, casting, batch, fillStart, order);
  moulds.turnsSinceOil[mould] = turnsAfterPour(moulds.turnsSinceOil[mould]!, false);
  moulds.coatStart[mould] = NONE;
  moulds.coatEnd[mould] = NONE;
  moulds.preppedFor[mould] = NONE;
  moulds.prepStart[mould] = NONE;
  moulds.setFor[mould] = casting;
  moulds.held[mould] = casting;
  moulds.heldOrder[mould] = order;
  moulds.heldPour[mould] = pour;
  moulds.outAt[mould] = out;
  moulds.curedAt[mould] = curedAt(setting, fillStart + fillMinutes);
  moulds.stripAt[mould] = NONE;
  demand.prepped[casting] = demand.prepped[casting]! - 1;
};
