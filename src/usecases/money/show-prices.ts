import { pricesOfKits } from '../../../db/stores/money-store.ts';
import type { Cost } from '../../engine/cost/cost.ts';
import { marginOf, priceWithMargin } from '../../engine/cost/margin.ts';
import { fromMinor, toMinor } from '../../engine/cost/minor-units.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { type CostFacts, costFacts, type MissingFacts, missingFacts } from './cost-facts.ts';
import { type CostGround, costGround } from './cost-ground.ts';

/** What is asked for one thing, beside what it costs. In the yard's money. */
export interface PricedThing {
  id: string;
  name: string;
  cost: CostFacts;
  /** Figures are missing in what it costs: it is more than that. */
  isMore: boolean;
  /** Null where no price was typed and no margin is said. By the margin of a cost that is more than is known, it is too low. */
  price: number | null;
  /** Typed, and not by the margin. */
  isTyped: boolean;
  /** What the margin would ask for it; null where none is said. */
  byMargin: number | null;
  /** What is left of the price, of 1; below 0 where it does not pay for it. */
  margin: number | null;
}

/** The price list. */
export interface PricesModel extends PageHead {
  currency: string;
  kits: readonly PricedThing[];
  /** Single pieces, by the margin. */
  pieces: readonly PricedThing[];
  missing: MissingFacts;
  marginPercent: number | null;
}

const pricedThing = (
  { id, name }: { id: string; name: string },
  cost: Cost,
  typed: number | null,
  { money: { currency, costs } }: CostGround,
): PricedThing => {
  const { marginPercent } = costs;
  const byMargin = marginPercent === undefined ? null : priceWithMargin(cost.total, marginPercent / 100);
  const price = typed === null ? byMargin : toMinor(typed, currency);
  return {
    ...{ id, name, cost: costFacts(cost, currency), isMore: cost.missing.length > 0, isTyped: typed !== null },
    price: price === null ? null : fromMinor(price, currency),
    byMargin: byMargin === null ? null : fromMinor(byMargin, currency),
    margin: price === null ? null : marginOf(price, cost.total),
  };
};

/** The price of each kit, and of each piece that is sold by itself, beside its cost. */
const pricesOf = (ground: CostGround, typed: ReadonlyMap<string, number>) => ({
  kits: ground.yard.kits.map((kit) =>
    pricedThing(kit, ground.estimates.ofKit(kit.id), typed.get(kit.id) ?? null, ground),
  ),
  pieces: ground.yard.castings.map((casting) =>
    pricedThing(casting, ground.estimates.ofCasting(casting.id), null, ground),
  ),
});

/** The price list of all kits and pieces, with what is missing for it. */
export const showPrices = async (context: UseCaseContext): Promise<PricesModel> => {
  const ground = await costGround(context);
  const { yard, estimates, money } = ground;
  const typed = await context.database.read(pricesOfKits);
  const costs = [
    ...yard.kits.map(({ id }) => estimates.ofKit(id)),
    ...yard.castings.map(({ id }) => estimates.ofCasting(id)),
  ];
  return {
    ...{ yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now), currency: money.currency },
    ...pricesOf(ground, typed),
    missing: missingFacts(costs, yard),
    marginPercent: money.costs.marginPercent ?? null,
  };
};
