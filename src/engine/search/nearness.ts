import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { DecoderState } from '../decoder/decoder-state.ts';
import type { Problem } from '../decoder/problem.ts';

/** Pours of the present plan by mould and minute: what a new plan of equal worth should leave as it is. */
export type PresentPours = Set<string>;

const key = (mould: number, fillStart: number): string => `${mould} ${fillStart}`;

/** The pours of a plan, as `poursLeft` counts them; those of moulds that are no longer there are left out. */
export const presentPours = (problem: Problem, plan: Pick<PlanFile, 'pours'>): PresentPours => {
  const moulds = new Map(problem.yard.moulds.map((m, k) => [m.id, k]));
  return new Set(
    plan.pours.flatMap((p) => (moulds.has(p.mould) ? [key(moulds.get(p.mould)!, minuteOf(p.fillStart))] : [])),
  );
};

/** How many pours of the plan in `state` fill the same mould at the same minute as in the present plan. */
export const poursLeft = (state: DecoderState, present: PresentPours): number => {
  let same = 0;
  for (let p = 0; p < state.placed.pours; p++)
    if (present.has(key(state.placed.pourMould[p]!, state.placed.pourFillStart[p]!))) same++;
  return same;
};
