import type { StoredOrder } from '../../../db/stores/order-store.ts';
import { readOrderFor } from '../../../shared/order-file.ts';
import type { UseCaseContext } from '../core/context.ts';
import type { CurrentPlan } from '../plan/make-plan.ts';
import { dateFor } from './date-for.ts';
import { canBeTakenUp } from './take-up-order.ts';

/** What a past order could be given if it were taken up today. */
export interface ReadyAgain {
  /** The date to give; null where there is none. */
  promiseOn: string | null;
}

/** The date that an order could be given that was cancelled or lapsed; null for any other. */
export const readyAgain = async (
  context: UseCaseContext,
  { yard }: Pick<CurrentPlan, 'yard'>,
  order: StoredOrder,
): Promise<ReadyAgain | null> => {
  if (!canBeTakenUp(order)) return null;
  const { id, weight, lines } = order;
  const read = readOrderFor(yard, { id, weight, lines });
  return { promiseOn: read.ok ? await dateFor(context, read.order) : null };
};
