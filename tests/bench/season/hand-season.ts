import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Arrival } from './arrivals.ts';
import { daysAfter, daysBetween, instantOf, seasonClock } from './clock.ts';
import { doByPlan, type WorkedYard } from './done-by-plan.ts';
import { buyByHand, receiveByHand } from './hand-buying.ts';
import { planFileByHand, promisedByHand } from './hand-plan.ts';
import type { LivedSeason } from './run-season.ts';

/** How a season ended for the planner by hand, with so many sessions in hand. */
export interface HandTally {
  sessionsInHand: number;
  due: number;
  kept: number;
  toldNo: number;
  quotedDays: number[];
}

/** A season by hand under way. */
interface HandSeason {
  yard: WorkedYard;
  plan: PlanFile;
  tally: HandTally;
  /** By order, the day promised and the day it was complete. */
  promises: Map<string, { promisedOn: string; readyOn: string | null }>;
  /** Deliveries whose supplier has said that they come later; they come on that day. */
  toldLate: Set<YardFile['incoming'][number]>;
}

/** As the season begins, with the stock that is there and what is on its way. */
const atStart = (start: YardFile, sessionsInHand: number): WorkedYard => {
  const { keep: _kept, ...yard } = structuredClone(start);
  return { ...yard, yard: { ...yard.yard, sessionsInHand } };
};

const replan = (season: HandSeason): void => {
  season.plan = planFileByHand(season.yard);
};

/** The customer is told the day by a plan with the order behind all others, and takes it. */
const serve = (season: HandSeason, { customer, what, number, date }: Arrival): void => {
  const { yard, tally } = season;
  const [kind, id] = [what.slice(0, what.indexOf(':')), what.slice(what.indexOf(':') + 1)];
  const line = kind === 'kit' ? { kit: id, quantity: number } : { casting: id, quantity: number };
  const order = { id: customer, weight: 3, lines: [line] };
  const asked = planFileByHand({ ...yard, orders: [...yard.orders, order] });
  const on = asked.orders.find((one) => one.id === customer);
  const promisedOn = on ? promisedByHand(yard, on.completesAt) : null;
  if (promisedOn === null) {
    tally.toldNo += 1;
    return;
  }
  tally.quotedDays.push(daysBetween(date, promisedOn));
  yard.orders.push({ ...order, due: promisedOn });
  season.promises.set(customer, { promisedOn, readyOn: null });
  replan(season);
};

const promiseAgain = (season: HandSeason, customer: string, promisedOn: string): void => {
  const [promise, order] = [season.promises.get(customer), season.yard.orders.find(({ id }) => id === customer)];
  if (!promise || !order) return;
  promise.promisedOn = promisedOn;
  order.due = promisedOn;
};

const changeMind = (season: HandSeason, { customer, mind }: Arrival): void => {
  const { yard, promises } = season;
  const [promise, order] = [promises.get(customer), yard.orders.find(({ id }) => id === customer)];
  if (!promise || !order || !mind) return;
  const planned = () => season.plan.orders.find(({ id }) => id === customer)?.completesOn;
  if (mind.kind === 'cancel') {
    yard.orders = yard.orders.filter((one) => one !== order);
    for (const piece of [...yard.finished, ...yard.inMould]) if (piece.order === customer) delete piece.order;
    promises.delete(customer);
  }
  if (mind.kind === 'later') promiseAgain(season, customer, daysAfter(promise.promisedOn, 14));
  const wanted = daysAfter(promise.promisedOn, -7);
  if (mind.kind === 'earlier' && (planned() ?? '9999') <= wanted && wanted > mind.on)
    promiseAgain(season, customer, wanted);
  if (mind.kind === 'more') order.lines = order.lines.map((line) => ({ ...line, quantity: line.quantity + 1 }));
  replan(season);
  const on = planned();
  if (mind.kind === 'more' && on && on > promise.promisedOn) promiseAgain(season, customer, on);
};

/** What goes wrong in the morning; the plan is made anew where something does. */
const misfortune = ({ yard }: HandSeason, { mishaps, start }: LivedSeason, today: string): boolean => {
  for (const mould of yard.moulds)
    if (mould.condition === 'damaged' && mould.repairedOn && mould.repairedOn <= today) {
      mould.condition = 'ready';
      delete mould.repairedOn;
    }
  const isLost = mishaps.isLost(today);
  if (isLost) {
    yard.closed = [...yard.closed, today];
    yard.extra = yard.extra.filter(({ date }) => date !== today);
  }
  const broken = mishaps.broken(
    today,
    start.moulds.map(({ id }) => id),
  );
  const mould = yard.moulds.find(({ id }) => id === broken?.mould);
  if (mould && broken) Object.assign(mould, { condition: 'damaged', prepped: false, repairedOn: broken.mendedOn });
  return isLost || broken !== null;
};

const judge = ({ promises, tally }: HandSeason, today: string): void => {
  for (const { promisedOn, readyOn } of promises.values()) {
    if (promisedOn !== today) continue;
    tally.due += 1;
    if (readyOn !== null && readyOn <= today) tally.kept += 1;
  }
};

/** One day: the day's work by the plan of the evening before, then those who ask, then what fell due. */
const liveDay = (season: HandSeason, lived: LivedSeason, today: string): void => {
  const { yard } = season;
  const { at } = seasonClock(yard.yard.timeZone, 0);
  const [from, to] = [at(today, '00:00'), at(daysAfter(today, 1), '00:00')];
  yard.yard.now = instantOf(from);
  const isLate = receiveByHand(season, today, lived.mishaps.deliveryLate);
  if (misfortune(season, lived, today) || isLate) replan(season);
  const { completed } = doByPlan(yard, season.plan, [instantOf(from), instantOf(to)], (mould) =>
    lived.mishaps.isReject(mould, today),
  );
  for (const id of completed) {
    const promise = season.promises.get(id);
    if (promise) promise.readyOn = today;
  }
  // The last minute of today: what is ordered in the evening is ordered today.
  yard.yard.now = instantOf(to - 1);
  for (const one of lived.arrivals.filter(({ mind }) => mind?.on === today)) changeMind(season, one);
  for (const one of lived.arrivals.filter(({ date }) => date === today)) serve(season, one);
  judge(season, today);
  replan(season);
  if (buyByHand(yard, season.plan, today)) replan(season);
};

/**
 * The same season by hand: each who asks is told the day that a plan by whiteboard has for the order behind all others,
 * with so many sessions in hand; the work is done by that plan, made anew each evening and where something goes wrong in the
 * morning. It meets what the program meets: rejects, lost days, broken moulds, changed minds, and late deliveries of what is
 * ordered on the day of the promise, with the same stock to begin with.
 */
export const handSeason = (lived: LivedSeason, from: string, days: number, sessionsInHand: number): HandTally => {
  const yard = atStart(lived.start, sessionsInHand);
  const tally: HandTally = { sessionsInHand, due: 0, kept: 0, toldNo: 0, quotedDays: [] };
  const season: HandSeason = { yard, plan: planFileByHand(yard), tally, promises: new Map(), toldLate: new Set() };
  for (let day = 0; day < days; day += 1) liveDay(season, lived, daysAfter(from, day));
  return tally;
};
