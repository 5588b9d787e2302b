import type { LateTaken, PlanOfWork } from '../../../shared/late-work.ts';
import type { PlanCoat, PlanPour } from '../../../shared/plan.ts';
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
  const packed = new Set(taken.orders.map(({ id }) => id));
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
    orders: [...plan.orders.filter(({ id }) => !packed.has(id)), ...taken.orders],
  };
};
