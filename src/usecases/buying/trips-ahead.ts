import type { Tx } from '../../../db/open.ts';
import { keptLines } from '../../../db/stores/kept-ready-store.ts';
import { materialsInOrder } from '../../../db/stores/material-store.ts';
import { costsOfYard } from '../../../db/stores/money-store.ts';
import { materialBuyingsById, suppliersByName } from '../../../db/stores/supplier-store.ts';
import { HOLDING_PERCENT } from '../../../shared/money.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { computeForRequest } from '../core/compute-for-request.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { keptForDay } from '../core/kept-for-day.ts';
import type { CurrentPlan } from '../plan/remake-plan.ts';
import { measuresOf, shownAmount } from '../typed/measures.ts';
import { materialUsesYielding } from './material-uses.ts';
import { type BuyingKnown, type TripsPlanned, tripsToAsk } from './trips-planned.ts';

type Planned = Pick<CurrentPlan, 'plan' | 'yard'>;

/** What the store knows of suppliers, and of how materials are bought. */
export const buyingKnown = async (tx: Tx): Promise<BuyingKnown> => ({
  suppliers: await suppliersByName(tx),
  buyings: await materialBuyingsById(tx),
  leadDays: new Map((await materialsInOrder(tx)).map(({ id, leadDays }) => [id, leadDays])),
  floatDays: (await measuresOf(tx)).floatDays,
  holdingPercent: (await costsOfYard(tx)).holdingPercent ?? HOLDING_PERCENT,
  kept: await keptLines(tx),
});

const kept = keptForDay<TripsPlanned>();

const workedOut = async (
  { database, background }: UseCaseContext,
  { plan, yard }: Planned,
  day: string,
): Promise<TripsPlanned> => {
  const uses = await materialUsesYielding(yard, plan);
  const { asked, beside } = tripsToAsk({ yard, plan, today: day, uses }, await database.read(buyingKnown));
  const { trips } = await computeForRequest(background, 'trips', { asked });
  return { trips, beside };
};

/**
 * All there is to buy by the plan that holds now, as trips: worked out in a thread, since it takes tens of milliseconds, and kept. Who asks
 * meanwhile waits for the same.
 */
export const tripsAhead = async (context: UseCaseContext, current: Planned): Promise<TripsPlanned> => {
  const day = today(current.yard.yard.timeZone, context.now);
  return kept({ ...current, day }, () => workedOut(context, current, day));
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
