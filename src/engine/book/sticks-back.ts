import type { Cut, Material } from '../../../shared/material.ts';
import type { PlanStick } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { goodsOfBatch, goodsOfOrder, linesToTake } from './goods.ts';
import { bagsPoured } from './pour.ts';
import { restOfStick, sticksCut } from './sticks-cut.ts';
import type { WorkDone } from './work-done.ts';

/** The pieces that work cuts from sticks; none for a batch whose pieces are of no one mix. */
const cutsOf = (work: WorkDone, yard: YardFile): Cut[] => {
  if (work.kind === 'packed') return goodsOfOrder(linesToTake(work, yard), yard).cuts;
  if (work.kind !== 'poured') return [];
  const poured = bagsPoured(work, yard);
  const castings = work.pours.map(({ casting }) => casting);
  return poured ? goodsOfBatch(poured.mix, poured.bags, castings, yard).cuts : [];
};

/** The sticks that work cuts in a yard as it stands before it, as a plan would have them at an instant. */
export const sticksOfWork = (
  work: WorkDone,
  yard: YardFile,
  { cutFor, openedAt }: { cutFor: string; openedAt: string },
): PlanStick[] => {
  const named = work.kind === 'poured' || work.kind === 'packed' ? (work.cutFrom ?? []) : [];
  return sticksCut(yard.materials, cutsOf(work, yard), named).sticks.map((stick) => ({
    ...stick,
    openedAt,
    cuts: stick.cuts.map((cut) => ({ ...cut, for: cutFor })),
  }));
};

/**
 * The sticks of a plan with those back that were cut before it, in order of time: where the plan goes on with what is left
 * of one, it is one stick again.
 *
 * Example: a stick of which four of 190 were cut leaves 2232; the plan cuts an offcut of 2232, and so the whole stick.
 */
export const sticksBack = (
  sticks: readonly PlanStick[],
  cut: readonly PlanStick[],
  materials: readonly Material[],
): PlanStick[] => {
  const back = [...sticks];
  for (const one of [...cut].reverse()) {
    const material = materials.find(({ id }) => id === one.material);
    const rest = material ? restOfStick(one, material) : 0;
    const place = back.findIndex((stick) => stick.material === one.material && stick.offcutMm === rest);
    if (place < 0) back.unshift(one);
    else back[place] = { ...one, cuts: [...one.cuts, ...back[place]!.cuts] };
  }
  return back;
};
