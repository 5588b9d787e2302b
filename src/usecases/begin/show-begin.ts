import { isDemo } from '../../../db/stores/habits-store.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { currentPlan } from '../plan/make-plan.ts';

/** What stands where a yard of one's own would be begun, and the zones to choose from. */
export const showBegin = async (context: UseCaseContext) => {
  const { yard } = await currentPlan(context);
  const { demo, system } = await context.database.read(async (tx) => ({
    demo: await isDemo(tx),
    system: await unitsOfYard(tx),
  }));
  return {
    ...{ demo, system, yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now) },
    /** What would be put away. */
    there: { moulds: yard.moulds.length, orders: yard.orders.length, kits: yard.kits.length },
    zones: Intl.supportedValuesOf('timeZone'),
  };
};
export type BeginModel = Awaited<ReturnType<typeof showBegin>>;
