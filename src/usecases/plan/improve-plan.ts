import type { Tx } from '../../../db/open.ts';
import { promisedDays } from '../../../db/stores/order-store.ts';
import { markImproved, planHead, savePlan } from '../../../db/stores/plan-store.ts';
import { revision } from '../../../db/stores/yard-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Compute, computeWithoutThread } from '../core/computations.ts';
import type { UseCaseContext } from '../core/context.ts';
import { asWorked } from './as-worked.ts';
import { type CachedPlan, cachedPlan, cachePlan, fileAt } from './cached-plan.ts';
import { dropsOf, type FixedPlan, fixedPlan, withKeep } from './fixed-plan.ts';
import { type BehindOrders, behindOrders } from './kept-ready.ts';
import type { LateWorkDone } from './late-work-done.ts';
import { BETTER_PLAN, recordRemake } from './record-remake.ts';
import { fixingFrom, givenOrders, startingFrom, told } from './remake-plan.ts';
import { isWorthMoving } from './worth-moving.ts';

/** A plan that was made in a hurry, and what a better one has to be made from. */
interface Hurried {
  cached: CachedPlan;
  yard: YardFile;
  fixed: FixedPlan;
  putBack: LateWorkDone['putBack'];
  behind: BehindOrders;
}

/** The stored plan, unless a longer search has been through it or its time or its data is over. */
const hurriedPlan = async (tx: Tx, context: UseCaseContext): Promise<Hurried | null> => {
  const cached = await cachedPlan(tx, context);
  const minute = minuteOf(context.now);
  if (!cached || cached.stored.improved) return null;
  const { stored, hours } = cached;
  if (minute < stored.goodFromMinute || minute >= stored.goodUntilMinute) return null;
  // As of the present: the hours since the plan was made are over, and nothing more can be done in them.
  const { yard, putBack } = asWorked(fileAt(cached, context.now), stored);
  const fixed = fixedPlan(fixingFrom(yard, stored, hours));
  const behind = await behindOrders(tx, yard);
  return { cached, yard: withKeep(yard, fixed.keep), fixed, putBack, behind };
};

/** Puts a better plan in place of the one it was made from, if that still stands; null when it did not. */
const storeBetter = async (
  tx: Tx,
  now: string,
  { cached, yard, fixed, putBack }: Hurried,
  found: { plan: PlanFile; memory: unknown },
): Promise<CachedPlan | null> => {
  const { stored } = cached;
  const head = await planHead(tx);
  if (head?.number !== stored.number || head.improved || (await revision(tx)) !== stored.revision) return null;
  const { plan, aside: unanswered } = putBack(told(found.plan));
  const given = new Set(givenOrders(await promisedDays(tx)));
  if (!isWorthMoving(yard, stored.plan, plan, given)) {
    await markImproved(tx);
    return null;
  }
  const better = {
    ...cached,
    stored: await savePlan(tx, { ...stored, now, plan, unanswered, memory: found.memory, improved: true }),
  };
  const dropped = dropsOf(fixed, found.plan);
  const recorded = fileAt(cached, now);
  const after = { plan, yard: recorded, revision: stored.revision, now, dropped, cached: better };
  await recordRemake(tx, now, BETTER_PLAN, stored, after);
  return better;
};

/**
 * Looks longer for a better plan than the stored one, which was made while somebody waited. It is put in place only if
 * nothing was changed meanwhile and it is better. When the search is given up, the plan that is there stays.
 */
export const improvePlan = async (
  context: UseCaseContext,
  compute: Compute = computeWithoutThread,
): Promise<'improved' | 'as good as it gets' | 'given up' | 'nothing to do'> => {
  const { database, now } = context;
  const hurried = await database.read((tx) => hurriedPlan(tx, context));
  if (!hurried) return 'nothing to do';
  const found = await compute('better plan', {
    ...{ yard: hurried.yard, ...hurried.behind },
    ...startingFrom(hurried.cached.stored),
  });
  if (!found) return 'given up';
  const better = await database.write((tx) => storeBetter(tx, now, hurried, found));
  if (!better) return 'as good as it gets';
  cachePlan(database, better);
  return 'improved';
};

/** Lets the stored plan be as it is: looking for a better one took too long. */
export const giveUpImproving = (context: UseCaseContext): Promise<void> =>
  context.database.write(async (tx) => {
    if (await hurriedPlan(tx, context)) await markImproved(tx);
  });
