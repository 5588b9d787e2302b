import { type Keep, type KeptPack, type KeptStrip, type PlanFile, spellsOf } from '../../../shared/plan.ts';

/** When each pour of a plan, and each piece in a mould before it, is stripped. */
const stripsOf = ({ pours, strips }: Pick<PlanFile, 'pours' | 'strips'>): KeptStrip[] => [
  ...strips.map(({ mould, stripStart, stripEnd }) => ({ mould, stripStart, stripEnd })),
  ...pours.map(({ id, mould, stripStart, stripEnd }) => ({ mould, pour: id, stripStart, stripEnd })),
];

/** When each order is packed: once for each spell. */
export const packsOf = ({ orders }: Pick<PlanFile, 'orders'>): KeptPack[] =>
  orders.flatMap((order) => spellsOf(order).map((spell) => ({ order: order.id, ...spell })));

/**
 * All of a plan as what is to be kept of it: batches with the set-ups and fills of their pours, strips, packings, coats. Planned
 * again with that, a yard in which nothing has changed has the same plan.
 */
export const keepOfPlan = (plan: Pick<PlanFile, 'batches' | 'pours' | 'coats' | 'strips' | 'orders'>): Keep => ({
  batches: plan.batches,
  pours: plan.pours,
  strips: stripsOf(plan),
  packs: packsOf(plan),
  coats: plan.coats,
});
