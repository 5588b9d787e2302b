import type { Material } from '../../../shared/material.ts';
import type { PlanSheet, PlanStick } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { goodsOfBatch, goodsOfOrder, linesToTake, type Taken } from './goods.ts';
import { bagsPoured } from './pour.ts';
import { sheetsCut } from './sheets-cut.ts';
import { restOfStick, sticksCut } from './sticks-cut.ts';
import type { WorkDone } from './work-done.ts';

const NOTHING: Taken = { goods: [], cuts: [] };

/** What work takes; nothing for a batch whose pieces are of no one mix. */
const takenBy = (work: WorkDone, yard: YardFile): Taken => {
  if (work.kind === 'packed') return goodsOfOrder(linesToTake(work, yard), yard);
  if (work.kind !== 'poured') return NOTHING;
  const poured = bagsPoured(work, yard);
  const castings = work.pours.map(({ casting }) => casting);
  return poured ? goodsOfBatch(poured.mix, poured.bags, castings, yard) : NOTHING;
};

const namedBy = (work: WorkDone) => (work.kind === 'poured' || work.kind === 'packed' ? (work.cutFrom ?? []) : []);

/** The sticks that work cuts in a yard as it stands before it, as a plan would have them at an instant. */
export const sticksOfWork = (
  work: WorkDone,
  yard: YardFile,
  { cutFor, openedAt }: { cutFor: string; openedAt: string },
): PlanStick[] => {
  return sticksCut(yard.materials, takenBy(work, yard).cuts, namedBy(work)).sticks.map((stick) => ({
    ...stick,
    openedAt,
    cuts: stick.cuts.map((cut) => ({ ...cut, for: cutFor })),
  }));
};

/** The sheets and rests that work cuts in a yard as it stands before it, as a plan would have them. */
export const sheetsOfWork = (work: WorkDone, yard: YardFile, cutFor: string): PlanSheet[] =>
  sheetsCut(yard, takenBy(work, yard).sheets ?? [], namedBy(work)).sheets.map(({ material, ...sheet }) => ({
    ...{ material, for: cutFor },
    ...sheet,
  }));

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
