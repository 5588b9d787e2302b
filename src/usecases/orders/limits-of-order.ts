import type { QuoteLimit } from '../../../shared/quote.ts';
import { dayNumber } from '../../../shared/time.ts';
import { computeWithoutThread } from '../core/computations.ts';
import type { UseCaseContext } from '../core/context.ts';
import { planToAsk } from '../plan/plan-to-ask.ts';

/** Something that would bring a day forward: what is changed, the day then, and how many days sooner that is. */
export type OrderLimit = Pick<QuoteLimit, 'change' | 'earliestOn' | 'daysSooner'>;

/**
 * What would bring forward the day of an order that is taken, largest gain first; null when it took too long to find out,
 * or when there is no such order in the plan.
 */
export const limitsOfOrder = async (context: UseCaseContext, id: string): Promise<OrderLimit[] | null> => {
  const { plan, yard, memory } = await planToAsk(context);
  const readyOn = plan.orders.find((order) => order.id === id)?.completesOn;
  if (readyOn === undefined) return null;
  const compute = context.background?.compute ?? computeWithoutThread;
  const limits = await compute('limits of an order taken', { yard, order: id, ...(memory ? { memory } : {}) });
  // It is asked about as if it were new; what counts here is the day it has in the plan.
  return (
    limits
      ?.filter(({ earliestOn }) => earliestOn < readyOn)
      .map(({ change, earliestOn }) => ({
        change,
        earliestOn,
        daysSooner: dayNumber(readyOn) - dayNumber(earliestOn),
      })) ?? null
  );
};
