import type { PlanFile } from '../../../shared/plan.ts';
import { dateOfDay } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { compile } from '../decoder/compile.ts';
import { handoverOn } from '../quote/promise.ts';
import { soonestComplete } from './soonest.ts';

/**
 * A plan of a yard that says of each order the hand-over day before which no plan at all completes it, whatever becomes of the
 * others (`soonestComplete`).
 */
export const withSoonestDays = (yard: YardFile, plan: PlanFile): PlanFile => {
  const problem = compile(yard);
  const index = new Map(yard.orders.map(({ id }, o) => [id, o]));
  const orders = plan.orders.map((order) => {
    const soonest = soonestComplete(problem, index.get(order.id)!);
    return { ...order, soonestOn: dateOfDay(handoverOn(problem, soonest)) };
  });
  return { ...plan, orders };
};
