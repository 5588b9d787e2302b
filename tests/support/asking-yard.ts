import type { Order } from '../../shared/order.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { planYard } from '../../src/engine/plan.ts';
import { diceOf } from './random-yard/dice.ts';
import { randomYard, type YardKind } from './random-yard.ts';

/** A random yard in which most dates were given as planned, some are only asked for, and its last order is not taken yet. */
export const askingYard = (seed: number, kind: YardKind = 'small'): { yard: YardFile; order: Order } | null => {
  const all = randomYard(seed, kind);
  const order = all.orders.at(-1);
  if (!order || all.orders.length < 3) return null;
  const free = <T extends { order?: string | undefined }>(x: T): T =>
    x.order === order.id ? { ...x, order: undefined } : x;
  const without = {
    ...{ ...all, orders: all.orders.slice(0, -1) },
    ...{ finished: all.finished.map(free), inMould: all.inMould.map(free) },
  };
  const planned = new Map(planYard(without, { effort: 'quick' }).orders.map((one) => [one.id, one.completesOn]));
  const dice = diceOf(seed);
  const orders = without.orders.map((one) =>
    dice.chance(0.6) ? { ...one, due: planned.get(one.id) ?? one.due } : { ...one, due: undefined, wanted: one.due },
  );
  return { yard: { ...without, orders }, order };
};
