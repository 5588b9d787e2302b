import type { Keep } from '../../../shared/plan.ts';
import type { UseCaseContext } from '../core/context.ts';
import { asWorked } from './as-worked.ts';
import { fixedPlan, withKeep } from './fixed-plan.ts';
import { type CurrentPlan, currentPlan } from './make-plan.ts';
import { fixingFrom } from './remake-plan.ts';
import { standingPours } from './standing-pours.ts';

/** The plan that stands, as questions are asked beside it. */
export interface PlanToAsk extends CurrentPlan {
  /** All of it that can still be: an answer is never later than with all of that kept. */
  standing?: Keep;
}

/** The plan that holds now, with the yard that questions beside it are asked of: it counts on late work as the plan does. */
export const planToAsk = async (context: UseCaseContext): Promise<PlanToAsk> => {
  const current = await currentPlan(context);
  const { cached } = current;
  const { yard } = asWorked(current.yard, cached.stored);
  const fixing = fixingFrom(yard, cached.stored, cached.hours);
  const { keep } = fixedPlan(fixing);
  const standing = standingPours(fixing, keep);
  return { ...current, yard: withKeep(yard, keep), ...(standing ? { standing } : {}) };
};
