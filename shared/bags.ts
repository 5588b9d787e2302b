import type { Material } from './material.ts';

/** Parts of what is on hand that have a date, or are opened. */
export type Lots = NonNullable<Material['lots']>;
/** Which bags: by the date on them and when they were opened; neither for what nobody knows the date of. */
export type BagsOf = Omit<Lots[number], 'quantity'>;
/** So much more of some bags, or less. */
export type BagsMoved = BagsOf & { quantity: number };

/** What there is of a material, with the parts that have a date. */
export type DatedStock = Pick<Material, 'onHand' | 'lots'>;

/** Sums of fractions are not exact: so little is nothing. */
const EPSILON = 1e-9;

/** What is opened stands first, then by their dates. */
const inPlace = ({ openedAt = '~', useBy = '' }: BagsOf): string => `${openedAt} ${useBy}`;

/** Whether they are the same bags. */
export const areSameBags = (one: BagsOf, { useBy, openedAt }: BagsOf): boolean =>
  one.useBy === useBy && one.openedAt === openedAt;

/** Which bags, with no field for what nobody knows. */
export const bagsNamed = ({ useBy, openedAt }: BagsOf): BagsOf => ({
  ...(useBy === undefined ? {} : { useBy }),
  ...(openedAt === undefined ? {} : { openedAt }),
});

/** Whether anything is known of which bags they are. */
export const areKnownBags = ({ useBy, openedAt }: BagsOf): boolean => useBy !== undefined || openedAt !== undefined;

/** How lots stand in a yard file: none that is nothing, in one order. */
export const lotsInOrder = (lots: Lots): Lots =>
  lots.filter(({ quantity }) => quantity > EPSILON).sort((a, b) => (inPlace(a) < inPlace(b) ? -1 : 1));

/** How much there is of which nobody knows the date. */
export const undatedIn = ({ onHand, lots = [] }: DatedStock): number =>
  Math.max(
    0,
    lots.reduce((left, { quantity }) => left - quantity, onHand),
  );

/**
 * Of which bags it is that so much is gone of which nobody says more: those of no known date first, then opened ones, then by
 * their dates. What there is not is of no known date.
 *
 * Example: of 3 bags, 2 of them of 2 May, 2 are gone: one of no known date, one of 2 May.
 */
export const bagsGone = (stock: DatedStock, quantity: number): BagsMoved[] => {
  const there = [{ quantity: undatedIn(stock) }, ...lotsInOrder([...(stock.lots ?? [])])];
  let left = quantity;
  const gone = there.flatMap((lot): BagsMoved[] => {
    const part = Math.min(left, lot.quantity);
    left -= Math.max(0, part);
    return part > EPSILON ? [{ ...bagsNamed(lot), quantity: -part }] : [];
  });
  return left > EPSILON ? [...gone, { quantity: -left }] : gone;
};
