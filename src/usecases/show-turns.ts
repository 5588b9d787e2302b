import { today, type UseCaseContext } from './context.ts';
import { currentPlan } from './make-plan.ts';
import { showMeasures, weekOf } from './measures.ts';
import { turnsModel } from './turns-model.ts';

/** Which mould is filled in which session, and for whom. */
export const showTurns = async (context: UseCaseContext) => {
  const { plan, yard } = await currentPlan(context);
  const { weekStart } = await showMeasures(context);
  const day = today(yard.yard.timeZone, context.now);
  return {
    ...{ yardName: yard.yard.name, today: day, thisWeek: weekOf(day, weekStart) },
    ...turnsModel(yard, plan, weekStart),
  };
};
