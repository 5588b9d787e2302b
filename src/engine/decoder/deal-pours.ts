import { outAt } from '../book/curing-times.ts';
import { begunIn } from './begun.ts';
import type { Dealing, Needing } from './deal-pieces.ts';
import type { DecoderState } from './decoder-state.ts';
import type { FixedBatch, FixedPour } from './fixed-batch.ts';

/** Fixed pours go to whom they were meant for, as far as they are still needed there and come out of their moulds. */
export const dealPours = (dealing: Dealing, { problem, lastStrip }: DecoderState, orders: readonly Needing[]): void => {
  const { yard, fixed, castings, mixes } = problem;
  const known = [...(yard.keep?.pours ?? []), ...begunIn(yard).pours];
  const meant = new Map(known.flatMap(({ id, order }) => (order === undefined ? [] : [[id, order] as const])));
  const needs = new Map(orders.map((one) => [yard.orders[one.order]!.id, one]));
  const deal = (batch: FixedBatch, pour: FixedPour): void => {
    const one = needs.get(meant.get(pour.id) ?? '');
    if (!one || !((one.left.get(pour.casting) ?? 0) > 0)) return;
    const out = outAt(mixes[batch.mix]!, pour.fillStart + castings[pour.casting]!.fillMinutes);
    const isForIt = batch.isBegun || problem.orders[one.order]!.from <= batch.start;
    if (!isForIt || out > lastStrip[pour.casting]!) return;
    dealing.pours.set(pour, one.order);
    dealing.add(one, pour.casting, 'pours');
  };
  for (const batch of fixed.batches) for (const pour of batch.pours) deal(batch, pour);
};
