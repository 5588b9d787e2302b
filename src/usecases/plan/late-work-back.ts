import type { LateTaken, PlanOfWork } from '../../../shared/late-work.ts';
import { type PlanCoat, type PlanOrder, type PlanPour, spellsOf, withSpells } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { allRenamed, freeId } from './fixed-plan.ts';

const isSame = (a: PlanPour, b: PlanPour): boolean =>
  a.mould === b.mould && a.casting === b.casting && a.fillStart === b.fillStart;

/** Pours that the plan still has, with the times they had, and those it no longer has. */
const poursBack = (pours: readonly PlanPour[], back: readonly PlanPour[]) => ({
  there: pours.map((pour) => {
    const was = back.find((one) => isSame(one, pour));
    return was ? { ...was, id: pour.id, batch: pour.batch } : pour;
  }),
  gone: back.filter((one) => !pours.some((pour) => isSame(one, pour))),
});

/** Orders with the packings back that were taken, in order of time: of one in several spells beside those it still has. */
const packsBack = (orders: readonly PlanOrder[], taken: readonly PlanOrder[]): PlanOrder[] => {
  const back = new Map(orders.map((order) => [order.id, order]));
  for (const { packs, ...order } of taken) {
    const there = packs && back.get(order.id);
    const own = spellsOf(order);
    const others = there ? spellsOf(there).filter(({ packStart }) => packStart !== order.packStart) : [];
    const spells = [...own, ...others].sort((a, b) => minuteOf(a.packStart) - minuteOf(b.packStart));
    back.delete(order.id);
    back.set(order.id, there ? { ...withSpells(there, spells), fromFinished: order.fromFinished } : order);
  }
  return [...back.values()];
};

/**
 * What a plan has to do, with what a change had taken off the list of late work. Of a plan that was made since it says
 * only what was late: pours may be in it that have no batch, for the sake of their set-up.
 */
export const withLateBack = <P extends PlanOfWork>(plan: P, taken: LateTaken): P => {
  const ids = new Set([...plan.batches, ...plan.pours].map(({ id }) => id));
  const { there, gone } = poursBack(plan.pours, [...taken.pours, ...taken.preps]);
  const mixes = allRenamed(
    taken.batches
      .map((batch) => ({ batch, pours: gone.filter((pour) => pour.batch === batch.id && taken.pours.includes(pour)) }))
      .filter(({ pours }) => pours.length > 0),
    ids,
  );
  const preps = gone
    .filter((pour) => taken.preps.includes(pour))
    .map((pour) => ({ ...pour, id: freeId(pour.id, ids), batch: freeId(pour.batch, ids) }));
  const isStripped = ({ mould, stripStart }: P['strips'][number]): boolean =>
    plan.strips.some((one) => one.mould === mould && one.stripStart === stripStart);
  const isCoated = ({ mould, start }: PlanCoat): boolean =>
    plan.coats?.some((one) => one.mould === mould && one.start === start) === true;
  return {
    ...plan,
    batches: [...plan.batches, ...mixes.map(({ batch }) => batch)],
    pours: [...there, ...mixes.flatMap(({ pours }) => pours), ...preps],
    coats: [...(plan.coats ?? []), ...(taken.coats ?? []).filter((coat) => !isCoated(coat))],
    strips: [...plan.strips, ...taken.strips.filter((strip) => !isStripped(strip))],
    orders: packsBack(plan.orders, taken.orders),
  };
};
