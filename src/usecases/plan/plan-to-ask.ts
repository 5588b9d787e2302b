import type { UseCaseContext } from '../core/context.ts';
import { asWritten } from './as-written.ts';
import { type CurrentPlan, currentPlan } from './make-plan.ts';

/** The plan that holds now, with the yard that questions beside it are asked of: it counts on late work as the plan does. */
export const planToAsk = async (context: UseCaseContext): Promise<CurrentPlan> => {
  const current = await currentPlan(context);
  return { ...current, yard: asWritten(current.yard, current.plan)?.yard ?? current.yard };
};
