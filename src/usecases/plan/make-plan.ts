import type { Database, Tx } from '../../../db/open.ts';
import { storedPlan } from '../../../db/stores/plan-store.ts';
import type { Moment } from '../core/compute-for-request.ts';
import type { UseCaseContext } from '../core/context.ts';
import { yieldThread } from '../core/yield-thread.ts';
import { cachePlan } from './cached-plan.ts';
import { lapseHolds } from './lapse-holds.ts';
import { recordRemake, TIME_PASSED } from './record-remake.ts';
import { type CurrentPlan, goodPlan, remakePlan } from './remake-plan.ts';

export type { CurrentPlan } from './remake-plan.ts';

const madeAnew = async (tx: Tx, moment: Moment): Promise<CurrentPlan> => {
  const before = await storedPlan(tx);
  const remade = await remakePlan(tx, moment, before);
  if (before) await recordRemake(tx, moment.now, TIME_PASSED, before, remade);
  return lapseHolds(tx, moment, remade);
};

/** The plan that holds now, inside a write transaction: the stored one if it is still good, else made anew. */
export const planForNow = async (tx: Tx, moment: Moment): Promise<CurrentPlan> =>
  (await goodPlan(tx, moment)) ?? madeAnew(tx, moment);

/** The last plan of each database that was found made in a hurry by another process. */
const found = new WeakMap<Database, number>();

/** Another process has no time to look for a better plan than the one it made: that is done here, once for each. */
const improveOfOthers = ({ database, background }: UseCaseContext, { cached: { stored } }: CurrentPlan): void => {
  if (stored.improved || !background || background.improving() || found.get(database) === stored.number) return;
  found.set(database, stored.number);
  background.planMade();
};

/** Carries a plan out of a transaction that is rolled back. */
class OnlyMade extends Error {
  readonly made: CurrentPlan;
  constructor(made: CurrentPlan) {
    super('only made');
    this.made = made;
  }
}

/** While a server does not answer, a plan whose time has passed is made anew for whoever looks, and stored by nobody. */
const madeApart = async (context: UseCaseContext): Promise<CurrentPlan> => {
  const onlyMade = async (tx: Tx): Promise<never> => {
    throw new OnlyMade(await planForNow(tx, context));
  };
  const thrown: unknown = await context.database.write(onlyMade).catch((error) => error);
  if (!(thrown instanceof OnlyMade)) throw thrown;
  return thrown.made;
};

/** The plan that holds now, with the data it was made from. Never a stale one. */
export const currentPlan = async (context: UseCaseContext): Promise<CurrentPlan> => {
  const { database, background } = context;
  const good = await database.read((tx) => goodPlan(tx, context));
  await yieldThread();
  if (good) {
    improveOfOthers(context, good);
    return good;
  }
  if (database.minutesAway() !== null) return madeApart(context);
  const made = await database.write((tx) => planForNow(tx, context));
  cachePlan(database, made.cached);
  background?.planMade();
  return made;
};
