import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import { beliefsOf } from '../../engine/odds/beliefs.ts';
import { shareOf } from '../../engine/odds/beta.ts';
import { type DateOdds, dayWith } from '../../engine/odds/date-odds.ts';
import { type Spare, spareFor } from '../../engine/odds/spares.ts';
import type { YardRecord } from '../../engine/odds/yard-record.ts';
import { computeWithoutThread } from '../core/computations.ts';
import type { UseCaseContext } from '../core/context.ts';
import { type PlanToAsk, planToAsk } from '../plan/plan-to-ask.ts';
import { yardRecord } from '../plan/yard-record.ts';

/** Odds that pages say: so many times out of so many. */
const ODDS_SAID = [
  { times: 1, of: 2 },
  { times: 8, of: 10 },
  { times: 9, of: 10 },
  { times: 19, of: 20 },
] as const;

/** The first day by which an order is ready so many times out of so many; null where that is too far off. */
interface DayByOdds {
  times: number;
  of: number;
  on: string | null;
}

/** A spare piece worth pouring, by its casting's name. */
export interface SpareFacts extends Spare {
  name: string;
}

/** How sure the day of an order is. */
export interface OddsFacts extends Pick<DateOdds, 'dependsOn' | 'restsOn' | 'isEnough' | 'draws'> {
  days: readonly DayByOdds[];
  /** The date that was given, or else the one asked for, and in how many courses it is kept; null without one. */
  due: { on: string; by: number } | null;
  spares: readonly SpareFacts[];
}

const sparesOf = (id: string, { pours }: PlanFile, { yard }: PlanToAsk, record: YardRecord): SpareFacts[] => {
  const counts = new Map<string, number>();
  for (const { order, casting } of pours) if (order === id) counts.set(casting, (counts.get(casting) ?? 0) + 1);
  const beliefs = beliefsOf(record);
  return [...counts].flatMap(([casting, count]) => {
    const spare = spareFor(casting, count, shareOf(beliefs.piecesOf(casting)));
    return spare ? [{ ...spare, name: yard.castings.find((one) => one.id === casting)?.name ?? casting }] : [];
  });
};

const keptBy = ({ days }: DateOdds, on: string): number => days.filter((day) => day.on <= on).at(-1)?.by ?? 0;

/**
 * The odds of an order's day by today's plan, worked out in a thread. Null where it took too long, and where no plan has the
 * order.
 */
export const oddsOfOrder = async (context: UseCaseContext, id: string): Promise<OddsFacts | null> => {
  const asked = await planToAsk(context);
  const { plan, yard, memory } = asked;
  const planned = plan.orders.find((order) => order.id === id);
  const order = yard.orders.find((one) => one.id === id);
  if (!planned || !order) return null;
  const record = await context.database.read((tx) => yardRecord(tx, asked.yard));
  const compute = context.background?.compute ?? computeWithoutThread;
  const question = { yard, order: id, completesAt: minuteOf(planned.completesAt), record };
  const answer = await compute('date odds', { ...question, ...(memory ? { memory } : {}) });
  const odds = answer?.odds;
  if (!odds) return null;
  const { dependsOn, restsOn, isEnough, draws } = odds;
  const due = order.due ?? order.wanted;
  return {
    ...{ dependsOn, restsOn, isEnough, draws },
    days: ODDS_SAID.map(({ times, of }) => ({ times, of, on: dayWith(odds, times / of) })),
    due: due === undefined ? null : { on: due, by: keptBy(odds, due) },
    spares: sparesOf(id, plan, asked, record),
  };
};
