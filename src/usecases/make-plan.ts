import type { Tx } from '../../db/open.ts';
import type { UseCaseContext } from './context.ts';
import { lapseHolds } from './lapse-holds.ts';
import { type CurrentPlan, goodPlan, remakePlan } from './remake-plan.ts';

export type { CurrentPlan } from './remake-plan.ts';

/** The plan that holds now, inside a write transaction: the stored one if it is still good, else made anew. */
export const planForNow = async (tx: Tx, now: string): Promise<CurrentPlan> =>
  (await goodPlan(tx, now)) ?? lapseHolds(tx, now, await remakePlan(tx, now));

/** The plan that holds now, with the data it was made from. Never a stale one. */
export const currentPlan = async ({ database, now }: UseCaseContext): Promise<CurrentPlan> =>
  (await database.read((tx) => goodPlan(tx, now))) ?? database.write((tx) => planForNow(tx, now));
