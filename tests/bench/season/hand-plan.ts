import type { PlanFile } from '../../../shared/plan.ts';
import { dateOfDay, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { NONE } from '../../../src/engine/decoder/problem.ts';
import { writePlan } from '../../../src/engine/decoder/write-plan.ts';
import { promiseDay } from '../../../src/engine/quote/promise.ts';
import { planByHand } from '../by-hand.ts';

/** More sticks than a yard of the season ever has. */
const MOST_HELD_BACK = 1000;

/** As it is now: a yard that is worked on in place is another one tomorrow, and its hours are remembered by what it was. */
const asItIs = (yard: YardFile): YardFile => ({ ...yard, yard: { ...yard.yard } });

/** A plan by hand as a plan file; placed again with a stick less where cuts do not fit the sticks that are there. */
export const planFileByHand = (yard: YardFile): PlanFile => {
  const problem = compile(asItIs(yard));
  const heldBack = new Int32Array(problem.materials.length);
  for (;;) {
    const at = planByHand(problem, heldBack);
    const left = yard.orders.filter((_, o) => at.orders.completesAt[o] === NONE);
    const written = writePlan(
      at,
      left.map(({ id }) => ({ order: id, cause: 'time', reason: 'the hours do not reach' })),
    );
    if ('plan' in written) return written.plan;
    heldBack[written.shortOf] = heldBack[written.shortOf]! + 1;
    if (heldBack[written.shortOf]! > MOST_HELD_BACK)
      throw new Error(`There is too little of ${yard.materials[written.shortOf]?.id} for a plan by hand.`);
  }
};

/** The day that is promised for what is complete at an instant, with the yard's sessions in hand; null beyond its plan. */
export const promisedByHand = (yard: YardFile, completesAt: string): string | null => {
  const day = promiseDay(compile(asItIs(yard)), minuteOf(completesAt));
  return day === null ? null : dateOfDay(day);
};
