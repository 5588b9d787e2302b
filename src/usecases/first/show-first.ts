import { openNotices } from '../../../db/stores/change-store.ts';
import { isDemo } from '../../../db/stores/habits-store.ts';
import { dayNumber } from '../../../shared/time.ts';
import { type BuyAhead, buysAhead } from '../buying/trips-ahead.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { OpenNotice, PageHead } from '../core/page-parts.ts';
import { mapYielding, yieldThread } from '../core/yield-thread.ts';
import { openOrdersOf } from '../orders/open-orders.ts';
import { type OrderFacts, orderFacts, ordersSeen } from '../orders/order-facts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { measuresOf } from '../typed/measures.ts';
import { type NextSession, nextSession } from './next-session.ts';

const BUYS_SHOWN = 6;
/** More than these are a list of their own. */
const RISKS_SHOWN = 20;
/** A hold that ends within this many days is worth a word. */
const HOLD_ENDS_SOON_DAYS = 2;

/** What stands below the question of the first page. */
export interface FirstModel extends PageHead {
  /** It is the yard that the program comes with. */
  demo: boolean;
  /** Null: no session has anything to do. */
  session: NextSession | null;
  /** The soonest to be ordered first, and how many more there are. */
  buys: readonly BuyAhead[];
  moreBuys: number;
  /** Orders that are late, can't be made, must not slip and have no day to spare, or are held and not for long. */
  risks: readonly OrderFacts[];
  /** How many more there are. */
  moreRisks: number;
  orderCount: number;
  notices: readonly OpenNotice[];
}

/** Late, on its very day though it must not slip, not to be made at all, or held for a customer who has to answer soon. */
const atRisk = (order: OrderFacts, day: string): boolean => {
  const { reason, readyOn, promisedOn, wantedOn, heldUntil, slip, inYard } = order;
  const due = promisedOn ?? wantedOn;
  const hasNoDay = slip === 'not' && readyOn === due && !inYard;
  const late = readyOn !== null && due !== null && (readyOn > due || hasNoDay);
  const holdEnds = heldUntil !== null && dayNumber(heldUntil) - dayNumber(day) <= HOLD_ENDS_SOON_DAYS;
  return reason !== null || late || holdEnds;
};

/** What stands below the question of the first page: the next session, what to buy by when, what is at risk. */
export const showFirst = async (context: UseCaseContext): Promise<FirstModel> => {
  const { plan, yard, cached } = await currentPlan(context);
  const day = today(yard.yard.timeZone, context.now);
  const { notices, demo, system } = await context.database.read(async (tx) => ({
    notices: await openNotices(tx),
    demo: await isDemo(tx),
    system: (await measuresOf(tx)).system,
  }));
  const seen = ordersSeen({ plan, yard }, system, context.now);
  const orders = await mapYielding(await openOrdersOf(context, cached), (order) => orderFacts(order, seen));
  const buys = await buysAhead(context, { plan, yard }, system);
  await yieldThread();
  const risks = orders.filter((order) => atRisk(order, day));
  return {
    demo,
    yardName: yard.yard.name,
    today: day,
    session: nextSession(plan, yard),
    buys: buys.slice(0, BUYS_SHOWN),
    moreBuys: Math.max(0, buys.length - BUYS_SHOWN),
    risks: risks.slice(0, RISKS_SHOWN),
    moreRisks: Math.max(0, risks.length - RISKS_SHOWN),
    orderCount: orders.length,
    notices: notices.map(({ id, words }) => ({ id, words })),
  };
};
