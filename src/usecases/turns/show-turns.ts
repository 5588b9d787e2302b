import { today, type UseCaseContext } from '../core/context.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { showMeasures, weekOf } from '../typed/measures.ts';
import { type SessionsAsked, turnsModel } from './turns-model.ts';

/** Which mould is filled in which of the sessions looked at, and for whom. */
export const showTurns = async (context: UseCaseContext, asked: SessionsAsked) => {
  const { plan, yard } = await currentPlan(context);
  const { weekStart } = await showMeasures(context);
  const day = today(yard.yard.timeZone, context.now);
  return {
    ...{ yardName: yard.yard.name, today: day, thisWeek: weekOf(day, weekStart) },
    ...turnsModel(yard, plan, weekStart, asked),
  };
};
