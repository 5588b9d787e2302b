import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { showMeasures, weekOf } from '../typed/measures.ts';
import { type SessionsAsked, type TurnsOfPlan, turnsOfPlan } from './turns-of-plan.ts';

/** The turns of the plan, seen from today. */
export interface TurnsModel extends PageHead, TurnsOfPlan {
  /** The first day of the yard's week that today is in. */
  thisWeek: string;
}

/** Which mould is filled in which of the sessions looked at, and for whom. */
export const showTurns = async (context: UseCaseContext, asked: SessionsAsked): Promise<TurnsModel> => {
  const { plan, yard } = await currentPlan(context);
  const { weekStart } = await showMeasures(context);
  const day = today(yard.yard.timeZone, context.now);
  return {
    ...{ yardName: yard.yard.name, today: day, thisWeek: weekOf(day, weekStart) },
    ...turnsOfPlan(yard, plan, weekStart, asked),
  };
};
