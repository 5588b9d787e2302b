import { habitsOfYard } from '../../../db/stores/habits-store.ts';
import { type Estimates, estimatesOf } from '../../engine/cost/estimates.ts';
import type { CostFigures } from '../../engine/cost/figures.ts';
import { sessionShare } from '../../engine/cost/session-share.ts';
import type { UseCaseContext } from '../core/context.ts';
import { type CurrentPlan, currentPlan } from '../plan/make-plan.ts';
import { costFigures, type MoneyOnRecord, moneyOnRecord } from './cost-figures.ts';

/** All that the pages of money are reckoned from: today's plan, figures, and estimates. In minor units. */
export interface CostGround extends Pick<CurrentPlan, 'plan' | 'yard'> {
  money: MoneyOnRecord;
  figures: CostFigures;
  estimates: Estimates;
}

/** Reads what costs are reckoned by. */
export const costGround = async (context: UseCaseContext): Promise<CostGround> => {
  const { plan, yard } = await currentPlan(context);
  const money = await context.database.read(async (tx) => moneyOnRecord(tx, (await habitsOfYard(tx)).currency));
  const figures = costFigures(yard, money);
  const estimates = estimatesOf({ yard, figures, perMinute: sessionShare(yard, figures) });
  return { plan, yard, money, figures, estimates };
};
