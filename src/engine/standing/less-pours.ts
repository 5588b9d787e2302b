import type { PlanBatch, PlanPour } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';

/** A batch with its pours in the order of filling. */
export interface BatchOfPours {
  batch: PlanBatch;
  pours: PlanPour[];
}

/** Minutes from the start of a pour's fill to its end. */
const fillMinutes = ({ fillStart, fillEnd }: PlanPour): number => minuteOf(fillEnd) - minuteOf(fillStart);

/** A batch less some of its pours: what is left is filled one after another from the same start. */
export const lessPours = (
  { batch, pours }: BatchOfPours,
  gone: ReadonlySet<PlanPour>,
  text: (at: Minute) => string,
): BatchOfPours => {
  const left = pours.filter((pour) => !gone.has(pour));
  const lastFill = Math.max(...pours.map(({ fillEnd }) => minuteOf(fillEnd)));
  const wash = minuteOf(batch.end) - lastFill;
  let at = minuteOf(batch.mixEnd);
  const filled = left.map((pour) => {
    const fillStart = text(at);
    at += fillMinutes(pour);
    return { ...pour, fillStart, fillEnd: text(at) };
  });
  return { batch: { ...batch, pours: filled.map(({ id }) => id), end: text(at + wash) }, pours: filled };
};
