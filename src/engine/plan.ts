import type { PlanFile } from '../../shared/plan.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { compile } from './place/compile.ts';
import { type Dispatch, dispatchOf } from './place/dispatch.ts';
import { placingOf } from './place/placing.ts';
import type { Problem } from './place/problem.ts';
import { settle } from './place/settle.ts';
import { writePlan } from './place/write-plan.ts';
import type { Effort } from './search/effort.ts';
import { quickSearch } from './search/quick.ts';
import { searchOn } from './search/search.ts';

/** Gives up the last firm batch; its sticks are then there for the others. */
const dropLastKept = (problem: Problem): Problem => {
  const { batches, dropped } = problem.kept;
  const reason = 'its lengths can no longer be cut from what is there by then';
  return { ...problem, kept: { batches: batches.slice(0, -1), dropped: [...dropped, { batch: batches.at(-1)!.id, reason }] } };
};

/** The plan of one dispatch, placed again with fewer sticks to count on where their cuts do not fit. */
export const planOf = (problem: Problem, dispatch: Dispatch): PlanFile => {
  const heldBack = new Int32Array(problem.materials.length);
  for (;;) {
    const at = placingOf(problem, dispatch, heldBack);
    const refused = settle(at, dispatch);
    const unplanned = [...refused].map(([order, why]) => ({ order: problem.yard.orders[order]!.id, ...why }));
    const written = writePlan(at, unplanned);
    if ('plan' in written) return written.plan;
    heldBack[written.shortOf] = heldBack[written.shortOf]! + 1;
    const { onHand, arrivals } = problem.materials[written.shortOf]!;
    if (heldBack[written.shortOf]! <= arrivals.reduce((n, x) => n + x.quantity, onHand) + 1) continue;
    if (problem.kept.batches.length === 0) throw new Error('a plan that cuts no scarce stick found no cut plan');
    return planOf(dropLastKept(problem), dispatch);
  }
};

/**
 * Plans a yard: every order planned whole, or left out with a reason, by rules R0–R12 of the yard file contract. Pure and
 * deterministic: the same file, effort and seed give the same plan on any machine. The file has to come from
 * `readYardFile`. Quick tries a few dispatches; normal and thorough search on from there, for a counted number of plans.
 */
export const planYard = (yard: YardFile, { effort = 'normal', seed = 1 }: { effort?: Effort; seed?: number } = {}): PlanFile => {
  const problem = compile(yard);
  const at = placingOf(problem, dispatchOf(new Int32Array(0)));
  const quick = quickSearch(at);
  return planOf(problem, effort === 'quick' ? quick.dispatch : searchOn(at, quick, effort, seed).dispatch);
};
