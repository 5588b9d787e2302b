import { NEVER, type Problem } from '../decoder/problem.ts';
import { type Job, weightedLateBound } from './late-bound.ts';
import { soonestDays } from './slots.ts';

/** Minutes of work that count as one slot of labour; what an order needs is rounded down to whole ones. */
const LABOUR_SLOT_MINUTES = 30;
/** Most slots of labour that are looked at. */
const MOST_LABOUR_SLOTS = 4000;

const jobsOf = (problem: Problem, orders: number[], slots: (order: number) => number): Job[] =>
  orders
    .map((o) => ({ slots: slots(o), weight: problem.orders[o]!.weight, dueDay: problem.orders[o]!.dueDay }))
    .filter((job) => job.slots > 0);

/** The bound by the moulds of one casting. */
const boundByCasting = (problem: Problem, orders: number[], casting: number, aim: number): number => {
  const jobs = jobsOf(problem, orders, (o) => problem.orders[o]!.pieces.find((p) => p.casting === casting)?.count ?? 0);
  const total = jobs.reduce((n, job) => n + job.slots, 0);
  const days = soonestDays(problem, casting, total);
  return days.length < total ? 0 : weightedLateBound(jobs, days, aim);
};

/** Person-minutes of a piece that no plan can do without: setting up, filling and stripping, as short as they get. */
const leastLabour = (problem: Problem, casting: number): number => {
  const { prepMinutes, fillMinutes, stripMinutes, stripCrew, mix } = problem.castings[casting]!;
  return prepMinutes + fillMinutes * problem.mixes[mix]!.crew + stripMinutes * stripCrew;
};

/** Hand-over day of each slot of labour, one for every so many person-minutes worked from now on. */
const labourDays = (problem: Problem, count: number): Int32Array => {
  const { shifts } = problem;
  const days = new Int32Array(count);
  let [k, minutes] = [0, 0];
  for (let s = 0; s < shifts.count && k < count; s++) {
    for (let i = shifts.offset[s]!; i < shifts.offset[s + 1]! && k < count; i++) {
      if (shifts.allow[i] === 0) continue;
      for (minutes += shifts.people[i]!; minutes >= LABOUR_SLOT_MINUTES && k < count; minutes -= LABOUR_SLOT_MINUTES) {
        const day = problem.calendar.dayOf(shifts.from[s]! + i - shifts.offset[s]!);
        days[k++] = problem.handover[day - problem.today]!;
      }
    }
  }
  return days.subarray(0, k);
};

/** The bound by the hours worked; pieces that are there already, or prepared, are let off all their labour. */
const boundByLabour = (problem: Problem, orders: number[], aim: number): number => {
  if (problem.finished.length > 0 || problem.inMould.length > 0 || problem.moulds.some((m) => m.prepped)) return 0;
  const labour = (o: number) =>
    problem.orders[o]!.pieces.reduce((n, p) => n + p.count * leastLabour(problem, p.casting), 0);
  const jobs = jobsOf(problem, orders, (o) => Math.floor(labour(o) / LABOUR_SLOT_MINUTES));
  const total = jobs.reduce((n, job) => n + job.slots, 0);
  if (total > MOST_LABOUR_SLOTS) return 0;
  const days = labourDays(problem, total);
  return days.length < total ? 0 : weightedLateBound(jobs, days, aim);
};

/**
 * A lower bound on `weightedDaysLate` of any plan that makes these orders: the best of what the moulds of each casting
 * and what the hours worked prove by themselves. `aim` is what some plan reaches. Never above the optimum.
 */
export const lateBound = (problem: Problem, orders: number[], aim: number): number => {
  const due = orders.filter((o) => problem.orders[o]!.dueDay < NEVER || problem.orders[o]!.weight > 0);
  let best = boundByLabour(problem, due, aim);
  for (let c = 0; c < problem.castings.length; c++) best = Math.max(best, boundByCasting(problem, due, c, aim));
  // Prices are sums of many small steps; what they prove is taken a hair lower.
  return Math.max(0, Math.min(aim, best - 1e-6 * Math.max(1, best)));
};
