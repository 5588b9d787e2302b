import { isDemo } from '../../../db/stores/habits-store.ts';
import { englishOfYard, unitsOfYard } from '../../../db/stores/units-store.ts';
import type { English } from '../../../shared/english.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';

/** What stands where a yard of one's own would be begun. */
export interface BeginModel extends PageHead {
  /** It is the yard that the program comes with. */
  demo: boolean;
  system: UnitSystem;
  english: English;
  /** How many of each would be put away. */
  there: Readonly<Record<'moulds' | 'orders' | 'kits', number>>;
  /** Time zones to choose from. */
  zones: readonly string[];
}

/** What stands where a yard of one's own would be begun, and the zones to choose from. */
export const showBegin = async (context: UseCaseContext): Promise<BeginModel> => {
  const { yard } = await currentPlan(context);
  const { demo, system, english } = await context.database.read(async (tx) => ({
    demo: await isDemo(tx),
    system: await unitsOfYard(tx),
    english: await englishOfYard(tx),
  }));
  return {
    ...{ demo, system, english, yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now) },
    there: { moulds: yard.moulds.length, orders: yard.orders.length, kits: yard.kits.length },
    zones: Intl.supportedValuesOf('timeZone'),
  };
};
