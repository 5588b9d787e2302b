import {
  areKnownBags,
  areSameBags,
  type BagsMoved,
  type BagsOf,
  bagsGone,
  bagsNamed,
  type DatedStock,
  type Lots,
  lotsInOrder,
  undatedIn,
} from '../../../shared/bags.ts';
import type { Material } from '../../../shared/material.ts';
import type { DayNumber } from '../../../shared/time.ts';
import { asDatedLot, type DatedLot, takeFromLots } from '../buy/dated-lots.ts';

/** Sums of fractions are not exact. */
const EPSILON = 1e-9;

const withLot = (lots: Lots, moved: BagsMoved): Lots => {
  const there = lots.find((one) => areSameBags(one, moved))?.quantity ?? 0;
  const others = lots.filter((one) => !areSameBags(one, moved));
  return lotsInOrder([...others, { ...bagsNamed(moved), quantity: there + moved.quantity }]);
};

/**
 * A material with so much more of some bags, or less: never less than none. Where it is less and nobody says of which bags,
 * they are those of `bagsGone`. The field is left out where no bag has a date.
 *
 * Example: 3 on hand, 2 of 2 May: one of 2 May less leaves 2 on hand, 1 of 2 May.
 */
export const withBags = <M extends DatedStock>(material: M, moved: BagsMoved): M => {
  const parts = moved.quantity < 0 && !areKnownBags(moved) ? bagsGone(material, -moved.quantity) : [moved];
  const { lots: before = [], ...rest } = material;
  const lots = parts.filter(areKnownBags).reduce(withLot, [...before]);
  const onHand = Math.max(0, material.onHand + moved.quantity);
  return { ...rest, onHand, ...(lots.length > 0 ? { lots } : {}) } as M;
};

/** A lot with its own date and instant beside the days it is planned by. */
type NamedLot = DatedLot & { bags: BagsOf };

const namedLots = (material: DatedStock, dayOf: (instant: string) => DayNumber): NamedLot[] =>
  [{ quantity: undatedIn(material) }, ...(material.lots ?? [])].flatMap(({ quantity, ...bags }: BagsMoved) =>
    quantity > EPSILON ? [{ ...asDatedLot({ quantity, ...bags }, dayOf), bags: bagsNamed(bags) }] : [],
  );

/** What is there of each bags after it less what there was, what is gone first. */
const differences = (before: readonly NamedLot[], after: readonly NamedLot[], at: string): BagsMoved[] => {
  const moved: BagsMoved[] = [];
  const add = (bags: BagsOf, quantity: number) => {
    const known = moved.find((one) => areSameBags(one, bags));
    if (known) known.quantity += quantity;
    else moved.push({ ...bags, quantity });
  };
  for (const { bags, quantity } of before) add(bags, -quantity);
  // What was opened for it is open from then on.
  for (const { bags, openedOn, quantity } of after)
    add(openedOn !== null && bags.openedAt === undefined ? { ...bags, openedAt: at } : bags, quantity);
  return moved.filter(({ quantity }) => Math.abs(quantity) > EPSILON).sort((a, b) => a.quantity - b.quantity);
};

/**
 * Of which bags work at an instant takes so much, as planning has it (`takeFromLots`): a bag that it opens is less, and what it
 * leaves of it is an opened one. Where all that is left is past its date, it was taken all the same: nobody else knows of any.
 *
 * Example: half of a bag of 2 May where an opened one keeps 14 days: a bag of 2 May less, half an opened one of 2 May more.
 */
export const bagsTaken = (
  material: DatedStock & Pick<Material, 'opensBy' | 'openedDays'>,
  quantity: number,
  at: string,
  dayOf: (instant: string) => DayNumber,
): BagsMoved[] => {
  if (material.openedDays === undefined && (material.lots ?? []).length === 0) return [{ quantity: -quantity }];
  const before = namedLots(material, dayOf);
  const { lots: after, short } = takeFromLots(before, quantity, dayOf(at), material);
  const moved = differences(before, after, at);
  if (short <= EPSILON) return moved;
  const left = moved.reduce((rest, one) => withBags(rest, one), material);
  return [...moved, ...bagsGone(left, short)];
};
