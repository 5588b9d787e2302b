import type { YardFile } from '../../../shared/yard-file.ts';
import { canonicalYard } from '../canonical-yard.ts';
import { compile } from '../decoder/compile.ts';
import { type DecoderState, decoderStateOf } from '../decoder/decoder-state.ts';
import { dispatchOf } from '../decoder/dispatch.ts';
import { NEVER } from '../decoder/problem.ts';
import { settle } from '../decoder/settle.ts';
import { type Evaluation, evaluate } from '../search/evaluation.ts';
import { dispatchFrom, type PlanMemory } from '../search/memory.ts';
import { quickSearch } from '../search/quick.ts';
import { daysAfterAim } from './present.ts';
import { withMould } from './relaxations.ts';

/** What one more mould of a casting would take off what is late. */
export interface NextMould {
  casting: string;
  weightedDaysSaved: number;
  daysSaved: { order: string; days: number }[];
}

const planned = (
  yard: YardFile,
  memory?: PlanMemory,
): { state: DecoderState; evaluation: Evaluation; daysLate: number[] } => {
  const problem = compile(yard);
  const state = decoderStateOf(problem, dispatchOf(new Int32Array(0)));
  settle(state, quickSearch(state, { first: memory ? [dispatchFrom(problem, memory)] : [] }).dispatch);
  return { state, evaluation: evaluate(state), daysLate: daysAfterAim(state) };
};

/** Weighted days late of the orders that are planned. */
const weightedDays = ({ orders }: YardFile, daysLate: readonly number[]): number =>
  daysLate.reduce((sum, days, o) => sum + (days < NEVER ? days * orders[o]!.weight : 0), 0);

/**
 * Which mould to build next: for each casting the weighted days late, for dates given or else asked for, that one more mould of it, built from now on, takes
 * off the plan; the present plan is the one a memory stands for, where there is one. Largest first, only real gains.
 */
export const nextMoulds = (asFiled: YardFile, memory?: PlanMemory): NextMould[] => {
  const { yard } = canonicalYard(asFiled);
  const now = planned(yard, memory);
  return yard.castings
    .flatMap((casting): NextMould[] => {
      const more = withMould(yard, casting.id);
      if (!more || now.daysLate.every((days) => days === 0 || days >= NEVER)) return [];
      const then = planned(more, memory);
      const weightedDaysSaved = weightedDays(yard, now.daysLate) - weightedDays(yard, then.daysLate);
      const daysSaved = yard.orders.flatMap((order, o) => {
        const days = now.daysLate[o]! - then.daysLate[o]!;
        return days > 0 && now.daysLate[o]! < NEVER ? [{ order: order.id, days }] : [];
      });
      const worse = then.evaluation.unplannedWeight > now.evaluation.unplannedWeight;
      return weightedDaysSaved > 0 && !worse ? [{ casting: casting.id, weightedDaysSaved, daysSaved }] : [];
    })
    .sort((a, b) => b.weightedDaysSaved - a.weightedDaysSaved);
};
