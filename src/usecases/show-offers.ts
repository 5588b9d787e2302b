import { today, type UseCaseContext } from './context.ts';
import { currentPlan } from './make-plan.ts';
import { offersOf } from './order-contents.ts';

/** What can be asked for and ordered. */
export const showOffers = async (context: UseCaseContext) => {
  const { yard } = await currentPlan(context);
  return { yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now), offers: offersOf(yard) };
};
