import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { Ground } from './ground.ts';
import { wantsOf } from './wants.ts';

/** So much of a material, in its own unit, is taken at a minute. */
export interface Use {
  material: string;
  at: Minute;
  quantity: number;
}

/** Cuts of one length for a batch or an order. */
export interface CutUse {
  material: string;
  lengthMm: number;
  count: number;
  at: Minute;
  for: string;
}

/**
 * What a plan uses and when (R10): a batch's bags and its pieces' materials at its start, an order's parts and cuts when it
 * is packed or else complete, a whole stick when it is opened, a sheet at the start of the batch that it is cut for. What has begun (R14) has been given what it uses.
 *
 * Example: a batch of 2 bags with 1 sachet a bag at 09:00 is one use of 2 sachets at 09:00.
 */
export const usesOf = (ground: Ground): { uses: Use[]; cuts: CutUse[] } => {
  const uses: Use[] = [];
  const cuts: CutUse[] = [];
  for (const { batch, mix, start, pours, underWay } of ground.batches) {
    if (underWay) continue;
    for (const x of mix.perBag) uses.push({ material: x.material, at: start, quantity: x.quantity * batch.bags });
    for (const { casting } of pours) {
      for (const x of casting.perPiece) uses.push({ material: x.material, at: start, quantity: x.quantity });
      for (const x of casting.cuts) cuts.push({ ...x, at: start, for: batch.id });
    }
  }
  for (const order of ground.plan.orders) {
    if (ground.underWay.packs.has(order.id)) continue;
    const wants = wantsOf(ground, ground.orders.get(order.id)!);
    const at = minuteOf(order.packStart ?? order.completesAt);
    for (const [material, quantity] of wants.parts) uses.push({ material, at, quantity });
    for (const x of wants.cuts) cuts.push({ ...x, at, for: order.id });
  }
  for (const x of ground.plan.sticks)
    if (x.offcutMm === undefined) uses.push({ material: x.material, at: minuteOf(x.openedAt), quantity: 1 });
  for (const { material, rest, for: id } of ground.plan.sheets ?? []) {
    const batch = ground.batches.find((one) => one.batch.id === id);
    if (batch && rest === undefined) uses.push({ material, at: batch.start, quantity: 1 });
  }
  return { uses, cuts };
};
