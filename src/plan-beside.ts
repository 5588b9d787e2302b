import { type Fault, pathText } from '../shared/fault.ts';
import { type Keep, type PlanFile, planFile } from '../shared/plan.ts';
import { shapeFaults } from '../shared/shape-faults.ts';
import { readYardFile, type YardFile } from '../shared/yard-file.ts';
import { withSoonestDays } from './engine/bound/soonest-days.ts';
import { planWithMemory } from './engine/plan.ts';
import type { Effort } from './engine/search/effort.ts';
import { memoryFromFile, type PlanMemory } from './engine/search/memory.ts';
import { keepOfPlan } from './engine/standing/keep-of-plan.ts';

/** A plan that a question is asked beside: all of it, and how it was come by where that is known. */
export interface PlanBeside {
  standing: Keep;
  near: PlanFile;
  memory?: PlanMemory;
}

/** The plan of a yard as a plan file, with how it was come by and what is proven of its days. */
export const planInFile = (yard: YardFile, effort: Effort): PlanFile => {
  const { plan, memory } = planWithMemory(yard, { effort });
  return {
    ...withSoonestDays(yard, plan),
    memory: { ...memory, choices: { ...memory.choices }, inShift: memory.inShift.map(([t, c]) => [t, { ...c }]) },
  };
};

/** Beside a plan file, just as the pages ask beside the plan that is stored. */
export const besidePlan = (plan: PlanFile): PlanBeside => ({
  standing: keepOfPlan(plan),
  near: plan,
  ...(plan.memory && { memory: memoryFromFile(plan.memory) }),
});

/** Reads a plan file of a yard; what it names has to be there. Faults have paths within the plan, as far as it has them. */
export const readPlanBeside = (
  yard: YardFile,
  input: unknown,
): { ok: true; value: PlanBeside } | { ok: false; faults: Fault[] } => {
  const read = planFile.safeParse(input, { reportInput: true });
  if (!read.success) return { ok: false, faults: shapeFaults(read.error.issues) };
  const value = besidePlan(read.data);
  const fitting = readYardFile({ ...yard, keep: value.standing });
  if (fitting.ok) return { ok: true, value };
  return {
    ok: false,
    faults: fitting.faults.map((fault) => ({ ...fault, path: fault.path.replace(/^keep\.?/, '') || pathText([]) })),
  };
};
