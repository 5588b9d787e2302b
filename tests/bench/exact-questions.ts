import type { Order } from '../../shared/order.ts';
import type { PlanFile } from '../../shared/plan.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { planWithMemory } from '../../src/engine/plan.ts';
import { quoteOrder } from '../../src/engine/quote/quote.ts';
import { refereePlan } from '../../src/engine/referee.ts';
import type { Effort } from '../../src/engine/search/effort.ts';
import { keepOfPlan } from '../../src/engine/standing/keep-of-plan.ts';
import { audit } from '../contract/audit-plan.mjs';
import { exactQuestion, type Question } from '../support/exact/exact-question.ts';
import { gridYard } from '../support/exact/grid-yard.ts';

/** One or two pieces of a casting, or kits where orders are for kits. */
const askedOf = ({ orders, castings, kits }: YardFile, seed: number): Order => {
  const place = seed % castings.length;
  const quantity = 1 + (Math.floor(seed / 6) % 2);
  const isPacked = orders[0]!.lines[0]!.kit !== undefined;
  const thing = isPacked ? { kit: kits[place]!.id } : { casting: castings[place]!.id };
  return { id: 'asked', weight: 1, lines: [{ ...thing, quantity }] };
};

interface Asked {
  question: Question;
  earliestOn: string;
  /** The planner says itself that no plan has it on an earlier day. */
  isProven: boolean;
  /** What is wrong with the plan by which the order is taken for the day it was told: that day was then none. */
  faults: string[];
}

/** What independent checks say of the plan of an order that was taken, and who is later in it than told. */
const faultsOf = (taken: YardFile, { known, mostLate }: Question): string[] => {
  const most = new Map(taken.orders.map(({ id }, o) => [id, mostLate[o] ?? 0]));
  return [
    ...audit(taken, known).faults,
    ...refereePlan(taken, known).map((finding) => JSON.stringify(finding)),
    ...known.unplanned.map(({ order }) => `${order} is left out`),
    ...known.orders.filter(({ id, daysLate }) => daysLate > most.get(id)!).map(({ id }) => `${id} is later than told`),
  ];
};

/**
 * Plans a small grid yard, with normal effort unless another is named, asks beside that plan, and takes the order for the day it is told. Null where the
 * plan leaves an order out.
 */
export const askedBeside = (seed: number, effort: Effort = 'normal'): Asked | null => {
  const yard = gridYard(seed);
  const asked = askedOf(yard, seed);
  const { plan, memory } = planWithMemory(yard, { effort });
  const standing = keepOfPlan(plan);
  const { earliestOn, proven: isProven } = quoteOrder(yard, asked, { memory, standing, near: plan });
  if (earliestOn === null || plan.unplanned.length > 0) return null;
  const taken = { ...yard, orders: [...yard.orders, { ...asked, due: earliestOn }] };
  const given = taken.orders.map(({ id }) => id);
  const known = planWithMemory(taken, { effort, near: plan, memory, standing, given }).plan;
  const mostLate = yard.orders.map(({ id }) => plan.orders.find((one) => one.id === id)!.daysLate);
  const question = { yard, asked, mostLate, known };
  return { question, earliestOn, isProven, faults: faultsOf(taken, question) };
};

/** Seconds of processor time for one yard, and yards, unless others are asked for. */
const SECONDS = 60;
const YARDS = 60;

const dayOf = (plan: PlanFile): string => plan.orders.find(({ id }) => id === 'asked')!.completesOn;

/**
 * `npm run bench -- question [yards] [seconds]`: the earliest day of a new order beside the plan that stands, on small grid yards,
 * against a mixed-integer program that looks for a plan with it on an earlier day and nobody later.
 */
export const questionBench = async (yards = YARDS, seconds = SECONDS): Promise<void> => {
  console.log(`\nThe earliest day of a new order against a MIP in HiGHS, ${yards} small yards, ${seconds} s each`);
  let [seen, exact, proven, wrongly, faults] = [0, 0, 0, 0, 0];
  for (let seed = 0; seed < yards; seed++) {
    const asked = askedBeside(seed);
    if (!asked) {
      console.log(`  ${seed}: not compared, an order is left out`);
      continue;
    }
    seen++;
    const answer = await exactQuestion(asked.question, seconds);
    if (answer.isProven) exact++;
    if (asked.isProven) proven++;
    if (asked.isProven && answer.plan) wrongly++;
    faults += answer.faults.length;
    for (const fault of asked.faults) console.log(`  ${seed}: ${asked.earliestOn} is not possible: ${fault}`);
    if (asked.faults.length > 0) faults++;
    if (answer.plan)
      console.log(`  ${seed}: ${asked.earliestOn}, possible ${dayOf(answer.plan)} ${answer.faults.join('; ')}`);
    else if (!answer.isProven)
      console.log(`  ${seed}: ${asked.earliestOn}, not known in ${Math.round(answer.seconds)} s`);
  }
  console.log(`  no plan has it on an earlier day: ${exact} of ${seen}`);
  console.log(
    `  proven by the planner itself: ${proven}, wrongly: ${wrongly}; days that are not possible, faulty plans: ${faults}`,
  );
};
