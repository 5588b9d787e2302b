import type { Order } from '../../../shared/order.ts';
import type { Keep } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { computeForRequest } from '../core/compute-for-request.ts';
import type { UseCaseContext } from '../core/context.ts';
import { planToAsk } from '../plan/plan-to-ask.ts';

const free = <T extends { order?: string | undefined }>(one: T, id: string): T =>
  one.order === id ? { ...one, order: undefined } : one;

const freeKept = (keep: Keep, id: string): Keep => ({ ...keep, pours: keep.pours.map((pour) => free(pour, id)) });

/**
 * The yard as if the order had never been taken: what is made or set aside for it is anybody's. The days that the others
 * asked for count as given.
 */
const yardWithout = (yard: YardFile, id: string): YardFile => ({
  ...yard,
  orders: yard.orders.filter((order) => order.id !== id).map((order) => ({ ...order, due: order.due ?? order.wanted })),
  finished: yard.finished.map((one) => free(one, id)),
  inMould: yard.inMould.map((one) => free(one, id)),
  ...(yard.keep ? { keep: freeKept(yard.keep, id) } : {}),
});

/**
 * The date that could be given to an order, taken or not, with the yard's sessions in hand and without any other order being
 * ready too late by it. Null where there is none.
 */
export const dateFor = async (context: UseCaseContext, order: Order): Promise<string | null> => {
  const { yard, memory, standing, plan } = await planToAsk(context);
  const { quote } = await computeForRequest(context.background, 'quote', {
    yard: yardWithout(yard, order.id),
    order: { ...order, due: undefined },
    ...(memory ? { memory } : {}),
    ...(standing ? { standing: freeKept(standing, order.id), near: plan } : {}),
  });
  return quote.promiseOn ?? quote.earliestOn;
};
