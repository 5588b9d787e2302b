import type { Order } from '../../../shared/order.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { dateOfDay, dayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { audit, calendar } from '../../contract/audit-plan.mjs';
import type { ExactModel } from './exact-model.ts';
import { exactModel, sessionsFor } from './exact-optimum.ts';
import { solutionAsPlan } from './solution-as-plan.ts';
import { solve } from './solve.ts';

/** What is asked: when a new order could be ready beside orders none of which may have more days late than these, by order. */
export interface Question {
  yard: YardFile;
  asked: Order;
  mostLate: readonly number[];
  /** A plan that has all of them; it is asked whether another has the new order on an earlier day. */
  known: PlanFile;
}

/** `isProven`: no plan has the order on an earlier day. `plan`: one that has. Neither where the time was up. */
export interface ExactAnswer {
  isProven: boolean;
  plan: PlanFile | null;
  /** What independent checks find wrong with such a plan. */
  faults: string[];
  seconds: number;
}

/** Sessions that are looked at beyond those of the plan known, where a solution leaves something for later ones. */
const MORE_SESSIONS = 4;
const MOST_ROUNDS = 3;

const todayOf = ({ yard }: YardFile): number => dayNumber(calendar(yard.timeZone).dateOf(minuteOf(yard.now)));

/** The yard with the new order, each order due on the last day it may have; the new one costs a point a day from today on. */
const withLimits = ({ yard, asked, mostLate }: Question): YardFile => ({
  ...yard,
  orders: [
    ...yard.orders.map((order, o) => ({ ...order, weight: 1, due: dateOfDay(dayNumber(order.due!) + mostLate[o]!) })),
    { ...asked, weight: 1, due: dateOfDay(todayOf(yard)), wanted: undefined },
  ],
});

/** In a plan of the yard with limits nobody but the new order is late. */
const faultsOf = (limited: YardFile, plan: PlanFile): string[] => {
  const late = plan.orders.filter(({ id, daysLate }) => id !== limited.orders.at(-1)!.id && daysLate > 0);
  return [...audit(limited, plan).faults, ...late.map(({ id }) => `${id} is later than it may be`)];
};

/** Takes away what may not be: an order after its last day, the new one on the day it has already or later. */
const forbid = ({ lp, packs, completions, later, orders }: ExactModel, daysKnown: number): void => {
  const added = orders.length - 1;
  for (const { order, column } of [...packs, ...completions, ...later])
    if (order === added ? lp.cost[column]! >= daysKnown : lp.cost[column]! > 0) lp.upper[column] = 0;
};

/**
 * Looks for a plan that has the new order on an earlier day than the one known, as a mixed-integer program over the first
 * sessions: those the plan known works in and one more, or some more where a solution needs them. Sessions after those count as
 * if they could finish anything, so that what is proven holds for all plans. `seconds` of processor time at the most.
 */
export const exactQuestion = async (question: Question, seconds: number): Promise<ExactAnswer> => {
  const limited = withLimits(question);
  const { completesOn } = question.known.orders.find(({ id }) => id === question.asked.id)!;
  const count = sessionsFor(limited, question.known);
  let spent = 0;
  for (let round = 0; round < MOST_ROUNDS && spent < seconds; round++) {
    const model = exactModel(limited, count + round * MORE_SESSIONS);
    forbid(model, dayNumber(completesOn) - todayOf(question.yard));
    const solved = await solve(model.lp, { seconds: seconds - spent });
    spent += solved.seconds;
    if (solved.status === 'infeasible') return { isProven: true, plan: null, faults: [], seconds: spent };
    const { values } = solved;
    if (!values) break;
    const isLater = model.later.some(({ column }) => values[column]! > 0.5);
    if (isLater) continue;
    const plan = solutionAsPlan(model, values);
    return { isProven: false, plan, faults: faultsOf(limited, plan), seconds: spent };
  }
  return { isProven: false, plan: null, faults: [], seconds: spent };
};
