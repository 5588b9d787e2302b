import { type Fault, pathText } from '../shared/fault.ts';
import type { OrderLine } from '../shared/order.ts';
import { type Keep, type PlanFile, planFile } from '../shared/plan.ts';
import { shapeFaults } from '../shared/shape-faults.ts';
import { readYardFile, type YardFile } from '../shared/yard-file.ts';
import type { YardRecord } from '../shared/yard-record.ts';
import { goodsOfLines } from './engine/book/goods.ts';
import { withSoonestDays } from './engine/bound/soonest-days.ts';
import { withKeptReady } from './engine/kept-ready.ts';
import { sparesWanted, withSpares } from './engine/odds/spares.ts';
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

/**
 * The plan of a yard as a plan file, with how it was come by and what is proven of its days. `ready`: what is to stand ready
 * for whoever comes, poured behind all orders as on the pages; so are pieces to spare where they go by a record.
 */
export const planInFile = (
  yard: YardFile,
  effort: Effort,
  { ready = [], sparesBy }: { ready?: readonly OrderLine[]; sparesBy?: YardRecord } = {},
): PlanFile => {
  const { plan: ofOrders, memory } = planWithMemory(yard, { effort });
  const pieces = [...goodsOfLines(ready, yard).pieces].map(([casting, count]) => ({ casting, count }));
  const spares = sparesBy ? sparesWanted(yard, ofOrders, sparesBy) : [];
  const plan = withKeptReady(yard, ofOrders, withSpares(pieces, spares), memory);
  return {
    ...withSoonestDays(yard, plan),
    memory: { ...memory, choices: { ...memory.choices }, inShift: memory.inShift.map(([t, c]) => [t, { ...c }]) },
  };
};

/** `kit:planter=2` or `casting:panel-900=3`: so many to stand ready. */
const READY = /^(kit|casting):(.+)=(\d{1,3})$/;

/** Reads what is to stand ready, each as `kit:ID=COUNT` or `casting:ID=COUNT`, with a fault for each that is none. */
export const readReady = (
  { kits, castings }: YardFile,
  asked: readonly string[],
): { ok: true; value: OrderLine[] } | { ok: false; faults: Fault[] } => {
  const faults: Fault[] = [];
  const lines = asked.flatMap((text, at): OrderLine[] => {
    const [, kind, id = '', count] = READY.exec(text) ?? [];
    const path = `ready[${at}]`;
    if (kind === undefined)
      faults.push({ path, message: `"${text}" is not written as kit:ID=COUNT or casting:ID=COUNT` });
    else if (!(kind === 'kit' ? kits : castings).some((one) => one.id === id))
      faults.push({ path, message: `no ${kind} named "${id}"` });
    const quantity = Number(count);
    return quantity > 0 ? [kind === 'kit' ? { kit: id, quantity } : { casting: id, quantity }] : [];
  });
  return faults.length === 0 ? { ok: true, value: lines } : { ok: false, faults };
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
