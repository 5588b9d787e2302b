import { dateOfDay } from '../../../shared/time.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { type Cost, CostSum } from '../../engine/cost/cost.ts';
import { fromMinor } from '../../engine/cost/minor-units.ts';
import { orderOwner, pieceOwner } from '../../engine/cost/minutes-of-plan.ts';
import type { SessionCost } from '../../engine/cost/session-costs.ts';
import type { Computations } from '../core/computations.ts';
import { computeForRequest } from '../core/compute-for-request.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { customersByOrder } from '../core/customers-by-order.ts';
import { beginningOf, keptForDay } from '../core/kept-for-day.ts';
import type { PageHead } from '../core/page-parts.ts';
import { type CostFacts, costFacts, type MissingFacts, missingFacts } from './cost-facts.ts';
import { type CostGround, costGround } from './cost-ground.ts';

/** What bears part of a session: so many pieces of a kind, or an order that is packed. */
interface SessionBearer {
  name: string;
  count: number | null;
  cost: CostFacts;
}

/** A session of today's plan. Its bearers and its rest come to its total. */
interface SessionCostFacts {
  date: string;
  /** "HH:MM" in the yard; null where goods leave the stock on a day without a session. */
  clock: string | null;
  bearers: readonly SessionBearer[];
  rest: number;
  total: number;
}

/** What the next sessions cost by today's plan. */
export interface SessionCostsModel extends PageHead {
  currency: string;
  sessions: readonly SessionCostFacts[];
  /** Sessions of the plan that are not shown. */
  more: number;
  missing: MissingFacts;
}

/** A page of them; what comes later changes before it comes. */
const SHOWN = 12;

type Names = ReadonlyMap<string, string>;

/** Pieces by what they are called, orders by whom they are for. */
const namesOfOwners = ({ plan, yard }: CostGround, customers: Names): Names => {
  const castings = new Map(yard.castings.map(({ id, name }) => [id, name]));
  const nameOf = (casting: string) => castings.get(casting) ?? casting;
  return new Map([
    ...plan.pours.map(({ id, casting }): [string, string] => [pieceOwner.ofPour(id), nameOf(casting)]),
    ...yard.inMould.map(({ mould, casting }): [string, string] => [pieceOwner.inMould(mould), nameOf(casting)]),
    ...plan.orders.map(({ id }): [string, string] => [orderOwner(id), `Parts and packing, ${customers.get(id) ?? id}`]),
  ]);
};

const bearersOf = ({ owners }: SessionCost, names: Names, currency: string): SessionBearer[] => {
  const groups = new Map<string, { sum: CostSum; count: number; isPiece: boolean }>();
  for (const [owner, cost] of owners) {
    const name = names.get(owner) ?? owner;
    const group = groups.get(name) ?? { sum: new CostSum(), count: 0, isPiece: !owner.startsWith(orderOwner('')) };
    group.sum.addCost(cost);
    group.count += 1;
    groups.set(name, group);
  }
  return [...groups].map(([name, { sum, count, isPiece }]) => ({
    ...{ name, count: isPiece ? count : null, cost: costFacts(sum.cost, currency) },
  }));
};

type Known = Computations['session costs']['answer'];

const kept = keptForDay<Known>();

/** What sessions cost from the beginning of a day on: worked out in a thread, and kept. */
const costsFrom = (
  { background }: UseCaseContext,
  { plan, yard, figures }: CostGround,
  day: string,
): Promise<Known> => {
  const now = beginningOf(day, yard.yard);
  const asked = { yard: { ...yard, yard: { ...yard.yard, now } }, plan, figures, most: SHOWN };
  return kept({ plan, yard, day }, () => computeForRequest(background, 'session costs', asked));
};

/** What each of the next sessions costs, and what bears it. */
export const showSessionCosts = async (context: UseCaseContext): Promise<SessionCostsModel> => {
  const ground = await costGround(context);
  const { yard, money } = ground;
  const day = today(yard.yard.timeZone, context.now);
  const { sessions, all } = await costsFrom(context, ground, day);
  const { instantText } = calendarOf(yard.yard.timeZone);
  const names = namesOfOwners(ground, customersByOrder(yard));
  const costs: Cost[] = sessions.flatMap(({ owners, rest }) => [...owners.values(), rest]);
  return {
    ...{ yardName: yard.yard.name, today: day, currency: money.currency },
    sessions: sessions.map((session) => ({
      date: dateOfDay(session.day),
      clock: session.isWorked ? instantText(session.start).slice(11, 16) : null,
      bearers: bearersOf(session, names, money.currency),
      rest: fromMinor(session.rest.total, money.currency),
      total: fromMinor(session.total, money.currency),
    })),
    more: all - sessions.length,
    missing: missingFacts(costs, yard),
  };
};
