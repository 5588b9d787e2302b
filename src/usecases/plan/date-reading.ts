import { today, type UseCaseContext } from '../core/context.ts';
import type { DateReading } from '../typed/date-typed.ts';
import { showMeasures } from '../typed/measures.ts';
import { currentPlan } from './make-plan.ts';

/** What a day that is typed is read by. */
export const dateReading = async (context: UseCaseContext): Promise<DateReading> => {
  const { yard } = await currentPlan(context);
  const { system, english } = await showMeasures(context);
  return { today: today(yard.yard.timeZone, context.now), system, english };
};
