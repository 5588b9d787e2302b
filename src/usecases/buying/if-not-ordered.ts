import type { PlanFile } from '../../../shared/plan.ts';
import { dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { TripLine } from '../../engine/buy/bought-goods.ts';
import type { Computations } from '../core/computations.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { planToAsk } from '../plan/plan-to-ask.ts';
import { tripsAhead } from './trips-ahead.ts';

/** An order that gets later where a thing is not ordered by its day; `to` is null where it cannot be made then. */
export interface SlipFacts {
  order: string;
  customer: string | null;
  from: string;
  to: string | null;
}

/** What was worked out beside one plan, by line; null while it is being worked out. */
type Known = Map<string, { slips: SlipFacts[] | null; asked: Promise<SlipFacts[] | null> }>;

const known = new WeakMap<PlanFile, Known>();

const nameOf = ({ material, orderBy }: Pick<TripLine, 'material' | 'orderBy'>): string => `${material} ${orderBy}`;

/** What is known already of a line, beside this plan; null where it has not been worked out. */
export const slipsKnown = (plan: PlanFile, line: Pick<TripLine, 'material' | 'orderBy'>): readonly SlipFacts[] | null =>
  known.get(plan)?.get(nameOf(line))?.slips ?? null;

/** The yard in which a thing comes as late as where it is ordered on the next day; what is ordered of it before comes as it is to. */
const yardWithout = (yard: YardFile, lines: readonly TripLine[], missed: TripLine, day: string): YardFile => ({
  ...yard,
  materials: yard.materials.map((one) =>
    one.id === missed.material ? { ...one, leadDays: Math.max(0, dayNumber(missed.ifMissed) - dayNumber(day)) } : one,
  ),
  incoming: [
    ...yard.incoming,
    ...lines
      .filter(({ material, orderBy }) => material === missed.material && orderBy < missed.orderBy)
      .map(({ material, quantity, comesOn }) => ({ material, quantity, on: comesOn })),
  ],
});

const slipsIn = (before: PlanFile, after: PlanFile, yard: YardFile): SlipFacts[] => {
  const then = new Map(after.orders.map(({ id, completesOn }) => [id, completesOn]));
  const customers = new Map(yard.orders.map(({ id, customer }) => [id, customer ?? null]));
  return before.orders.flatMap(({ id, completesOn }) => {
    const to = then.get(id) ?? null;
    const isLater = to === null || to > completesOn;
    return isLater ? [{ order: id, customer: customers.get(id) ?? null, from: completesOn, to }] : [];
  });
};

const workedOut = async (context: UseCaseContext, plan: PlanFile, question: Computations['quick plan']['question']) => {
  const { background } = context;
  // Where there is no thread nobody is kept waiting for it.
  const answer = await (background?.ponder ?? background?.compute)?.('quick plan', question);
  return answer ? slipsIn(plan, answer.plan, question.yard) : null;
};

/**
 * Which orders get later where one line of the buying list is not ordered by its day, by planning again with it ordered on the
 * next day on which that can be done. Worked out in a thread, once for a plan, and kept with it; null where there is no such
 * line any more, or it was given up.
 */
export const ifNotOrdered = async (
  context: UseCaseContext,
  asked: { material: string; orderBy: string },
): Promise<SlipFacts[] | null> => {
  const { plan, yard, memory, standing } = await planToAsk(context);
  const lines = (await tripsAhead(context, await currentPlan(context))).trips.flatMap((trip) => trip.lines);
  const missed = lines.find((line) => nameOf(line) === nameOf(asked));
  if (!missed) return null;
  const ofPlan: Known = known.get(plan) ?? new Map();
  known.set(plan, ofPlan);
  const name = nameOf(missed);
  const before = ofPlan.get(name);
  if (before) return before.asked;
  const later = yardWithout(yard, lines, missed, today(yard.yard.timeZone, context.now));
  const question = {
    yard: later,
    near: plan,
    ...(memory ? { memory } : {}),
    ...(standing ? { standing, given: yard.orders.flatMap(({ id, due }) => (due === undefined ? [] : [id])) } : {}),
  };
  const asking = workedOut(context, plan, question).catch(() => null);
  ofPlan.set(name, { slips: null, asked: asking });
  const slips = await asking;
  // What was given up is asked anew.
  if (slips === null) ofPlan.delete(name);
  else ofPlan.set(name, { slips, asked: asking });
  return slips;
};
