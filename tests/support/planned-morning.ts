import { currentPlan } from '../../src/usecases/plan/make-plan.ts';
import { plannedYard, saturday } from './planned-yard.ts';
import { yardContext } from './yard-context.ts';

/**
 * A Saturday, planned at 7:30 for one panel and an order of two: 8:10 set up no. 1 (12 minutes), 8:22 mix (10), full at 8:39,
 * out from 9:54 on (75 minutes after it was full) until 10:02, packed from 10:02 to 10:07.
 */
export const plannedMorning = async () => {
  const { database } = await yardContext(plannedYard({ yard: { ...plannedYard().yard, now: saturday('07:30') } }));
  const at = (clock: string) => ({ database, now: saturday(clock) });
  await currentPlan(at('07:30'));
  /** By the plan at a time: how many batches there are; and of the one pour, mixed from, full at, out from, and packed from. */
  const plannedAt = async (clock: string) => {
    const { batches, pours, orders } = (await currentPlan(at(clock))).plan;
    const instants = [batches[0]?.start, pours[0]?.fillEnd, pours[0]?.stripStart, orders[0]?.packStart];
    return { batches: batches.length, instants };
  };
  return { at, plannedAt };
};
