import type { Tx } from '../../../db/open.ts';
import { keptLines } from '../../../db/stores/kept-ready-store.ts';
import { materialsInOrder } from '../../../db/stores/material-store.ts';
import { materialBuyingsById, suppliersByName } from '../../../db/stores/supplier-store.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { CurrentPlan } from '../plan/remake-plan.ts';
import { measuresOf, shownAmount } from '../typed/measures.ts';
import { materialUsesYielding } from './material-uses.ts';
import { type BuyingKnown, type TripsPlanned, tripsPlanned } from './trips-planned.ts';

type Planned = Pick<CurrentPlan, 'plan' | 'yard'>;

/** What the store knows of suppliers, and of how materials are bought. */
export const buyingKnown = async (tx: Tx): Promise<BuyingKnown> => ({
  suppliers: await suppliersByName(tx),
  buyings: await materialBuyingsById(tx),
  leadDays: new Map((await materialsInOrder(tx)).map(({ id, leadDays }) => [id, leadDays])),
  floatDays: (await measuresOf(tx)).floatDays,
  kept: await keptLines(tx),
});

/** Worked out once for a plan and a day: with other data there is another plan. */
const known = new WeakMap<PlanFile, { day: string; yard: Planned['yard']; planned: TripsPlanned }>();

/** All there is to buy by the plan that holds now, as trips. */
export const tripsAhead = async (context: UseCaseContext, { plan, yard }: Planned): Promise<TripsPlanned> => {
  const day = today(yard.yard.timeZone, context.now);
  const before = known.get(plan);
  if (before && before.day === day && before.yard === yard) return before.planned;
  const uses = await materialUsesYielding(yard, plan);
  const planned = tripsPlanned({ yard, plan, today: day, uses }, await context.database.read(buyingKnown));
  known.set(plan, { day, yard, planned });
  return planned;
};

/** Something to be bought, in the unit that is shown, and the last day to order it. */
export interface BuyAhead {
  name: string;
  unit: string;
  quantity: number;
  orderBy: string;
}

/** What there is to buy, line by line as on Buying, the soonest to be ordered first. */
export const buysAhead = async (context: UseCaseContext, planned: Planned, system: UnitSystem): Promise<BuyAhead[]> => {
  const { trips } = await tripsAhead(context, planned);
  const materials = new Map(planned.yard.materials.map((one) => [one.id, one]));
  return trips
    .flatMap(({ lines }) => lines)
    .sort((a, b) => a.orderBy.localeCompare(b.orderBy))
    .map(({ material, quantity, orderBy }) => {
      const { name, unit } = materials.get(material) ?? { name: material, unit: '' };
      return shownAmount({ name, unit, quantity, orderBy }, system);
    });
};
