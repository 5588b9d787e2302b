import { today, type UseCaseContext } from './context.ts';
import { currentPlan } from './make-plan.ts';
import { turnsModel } from './turns-model.ts';

/** Which mould is filled in which session, and for whom. */
export const showTurns = async (context: UseCaseContext) => {
  const { plan, yard } = await currentPlan(context);
  return { yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now), ...turnsModel(yard, plan) };
};
