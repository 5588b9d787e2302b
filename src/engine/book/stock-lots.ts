import type { Material } from '../../../shared/material.ts';
import { type DayNumber, dayNumber } from '../../../shared/time.ts';
import { type DatedLot, takeFromLots } from '../buy/dated-lots.ts';

/** Parts of what is on hand that have a date, or are opened. */
type Lots = NonNullable<Material['lots']>;
/** Which bags: by the date on them and when they were opened; neither for what nobody knows the date of. */
export type BagsOf = Omit<Lots[number], 'quantity'>;
/** So much more of some bags, or less. */
export type BagsMoved = BagsOf & { quantity: number };

type Stock = Pick<Material, 'onHand' | 'lots'>;

/** Sums of fractions are not exact. */
const EPSILON = 1e-9;

/** What is opened stands first, then by their dates. */
const inPlace = ({ openedAt = '~', useBy = '' }: BagsOf): string => `${openedAt} ${useBy}`;

const isOf = (one: BagsOf, { useBy, openedAt }: BagsOf): boolean => one.useBy === useBy && one.openedAt === openedAt;

const named = ({ useBy, openedAt }: BagsOf): BagsOf => ({
  ...(useBy === undefined ? {} : { useBy }),
  ...(openedAt === undefined ? {} : { openedAt }),
});

const isNamed = ({ useBy, openedAt }: BagsOf): boolean => useBy !== undefined || openedAt !== undefined;

/** How lots stand in a yard file: none that is nothing, in one order. */
export const lotsInOrder = (lots: Lots): Lots =>
  lots.filter(({ quantity }) => quantity > EPSILON).sort((a, b) => (inPlace(a) < inPlace(b) ? -1 : 1));

/** What nobody knows the date of. */
const undatedIn = ({ onHand, lots = [] }: Stock): number =>
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
export const bagsGone = (stock: Stock, quantity: number): BagsMoved[] => {
  const there = [{ quantity: undatedIn(stock) }, ...lotsInOrder([...(stock.lots ?? [])])];
  let left = quantity;
  const gone = there.flatMap((lot): BagsMoved[] => {
    const part = Math.min(left, lot.quantity);
    left -= Math.max(0, part);
    return part > EPSILON ? [{ ...named(lot), quantity: -part }] : [];
  });
  return left > EPSILON ? [...gone, { quantity: -left }] : gone;
};

const withLot = (lots: Lots, moved: BagsMoved): Lots => {
  const there = lots.find((one) => isOf(one, moved))?.quantity ?? 0;
  const others = lots.filter((one) => !isOf(one, moved));
  return lotsInOrder([...others, { ...named(moved), quantity: there + moved.quantity }]);
};

/**
 * A material with so much more of some bags, or less: never less than none. Where it is less and nobody says of which bags,
 * they are those of `bagsGone`. The field is left out where no bag has a date.
 *
 * Example: 3 on hand, 2 of 2 May: one of 2 May less leaves 2 on hand, 1 of 2 May.
 */
export const withBags = <M extends Stock>(material: M, moved: BagsMoved): M => {
  const parts = moved.quantity < 0 && !isNamed(moved) ? bagsGone(material, -moved.quantity) : [moved];
  const { lots: before = [], ...rest } = material;
  const lots = parts.filter(isNamed).reduce(withLot, [...before]);
  const onHand = Math.max(0, material.onHand + moved.quantity);
  return { ...rest, onHand, ...(lots.length > 0 ? { lots } : {}) } as M;
};

/** A lot with its own date and instant beside the days it is planned by. */
type NamedLot = DatedLot & { bags: BagsOf };

const namedLots = (material: Stock, dayOf: (instant: string) => DayNumber): NamedLot[] =>
  [{ quantity: undatedIn(material) }, ...(material.lots ?? [])].flatMap(({ quantity, ...bags }: BagsMoved) =>
    quantity > EPSILON
      ? [
          {
            ...{ quantity, bags: named(bags), useBy: bags.useBy === undefined ? null : dayNumber(bags.useBy) },
            openedOn: bags.openedAt === undefined ? null : dayOf(bags.openedAt),
          },
        ]
      : [],
  );

/** What is there of each bags after it less what there was, what is gone first. */
const differences = (before: readonly NamedLot[], after: readonly NamedLot[], at: string): BagsMoved[] => {
  const moved: BagsMoved[] = [];
  const add = (bags: BagsOf, quantity: number) => {
    const known = moved.find((one) => isOf(one, bags));
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
  material: Stock & Pick<Material, 'opensBy' | 'openedDays'>,
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
