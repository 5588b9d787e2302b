import { type BagsMoved, type DatedStock, undatedIn } from '../../../shared/bags.ts';
import { isCutUp, type Material } from '../../../shared/material.ts';
import { type DayNumber, dayNumber } from '../../../shared/time.ts';

/**
 * So much of a material that is used up by a day: the last day on which it is used, null where it keeps. An opened one
 * (a bag, a can) says the day it was opened.
 */
export interface DatedLot {
  quantity: number;
  useBy: DayNumber | null;
  openedOn: DayNumber | null;
}

/** How a material is opened and for how long it keeps then, in its own unit and days. */
export type Opening = Pick<Material, 'opensBy' | 'openedDays'>;

/** Whether anything of a material can go past its date, as bags do and what is cut up does not. */
export const isDated = ({
  shelfLifeDays,
  openedDays,
  lots = [],
  ...of
}: Pick<Material, 'stickMm' | 'inSheets' | 'shelfLifeDays' | 'openedDays' | 'lots'>): boolean =>
  !isCutUp(of) &&
  (shelfLifeDays !== undefined || openedDays !== undefined || lots.some(({ useBy }) => useBy !== undefined));

/** So much of a lot is taken; the lot as it was before. */
interface TakenLot<L> {
  lot: L;
  quantity: number;
}

/** Sums of fractions are not exact; rules are checked with a coarser figure. */
const EPSILON = 1e-9;

const NO_DAY = Number.POSITIVE_INFINITY;

/** The last day on which a lot is used: no later than its date, and so many days after it was opened. */
export const lastDayOf = ({ useBy, openedOn }: DatedLot, { openedDays }: Opening): number =>
  Math.min(useBy ?? NO_DAY, openedOn === null || openedDays === undefined ? NO_DAY : openedOn + openedDays);

/** By days first, and of equals, or where both keep for ever, the smaller first. */
const bySize = (days: number, a: DatedLot, b: DatedLot): number => days || a.quantity - b.quantity;

/** What is opened goes first, then what nobody knows the date of, then what has to be used soonest. */
const inOrder = <L extends DatedLot>(lots: readonly L[], opening: Opening): L[] =>
  [...lots].sort((a, b) => {
    const [isOpenA, isOpenB] = [a.openedOn !== null, b.openedOn !== null];
    if (isOpenA !== isOpenB) return isOpenA ? -1 : 1;
    const [lastA, lastB] = [lastDayOf(a, opening), lastDayOf(b, opening)];
    if (isOpenA) return bySize(lastA - lastB, a, b);
    const [undatedA, undatedB] = [a.useBy === null, b.useBy === null];
    return bySize(undatedA || undatedB ? Number(undatedB) - Number(undatedA) : lastA - lastB, a, b);
  });

/** How much is there on a day that may still be used then, in the material's unit. */
export const usableOn = (lots: readonly DatedLot[], day: DayNumber, opening: Opening): number =>
  lots.reduce((sum, lot) => (lastDayOf(lot, opening) >= day ? sum + lot.quantity : sum), 0);

/** What is left of a lot that so much of it was taken from on a day: the rest of what had to be opened for it is open. */
const restOf = <L extends DatedLot>(
  lot: L,
  taken: number,
  day: DayNumber,
  { opensBy = 1, openedDays }: Opening,
): L[] => {
  const left = lot.quantity - taken;
  if (left <= EPSILON) return [];
  if (openedDays === undefined || lot.openedOn !== null) return [{ ...lot, quantity: left }];
  const opened = Math.ceil(taken / opensBy - EPSILON) * opensBy;
  const open = Math.min(left, Math.max(0, opened - taken));
  return [
    ...(open > EPSILON ? [{ ...lot, quantity: open, openedOn: day }] : []),
    ...(left - open > EPSILON ? [{ ...lot, quantity: left - open }] : []),
  ];
};

/** What a use takes, what is there after it, and how much of it was not to be had. Lots may carry more than planning asks. */
export interface LotsTaken<L> {
  lots: L[];
  taken: TakenLot<L>[];
  short: number;
}

/**
 * Which lots a use on a day takes (R10): first what is opened, then what has no date, then the soonest to go past its date,
 * and never what is past it. With `openedDays` so much is opened at a time as `opensBy`; the rest of what was opened last is
 * an opened lot from then on.
 *
 * Example: 2 bags of the 10th and 3 of the 20th, 1 bag opened at a time, 2.5 used on the 4th: both of the 10th and half a bag of
 * the 20th; half a bag opened on the 4th and 2 bags of the 20th are left.
 */
export const takeFromLots = <L extends DatedLot>(
  lots: readonly L[],
  quantity: number,
  day: DayNumber,
  opening: Opening,
): LotsTaken<L> => {
  let wanted = quantity;
  const taken: TakenLot<L>[] = [];
  const after = inOrder(lots, opening).flatMap((lot) => {
    if (wanted <= EPSILON || lastDayOf(lot, opening) < day) return [lot];
    const part = Math.min(lot.quantity, wanted);
    wanted -= part;
    taken.push({ lot, quantity: part });
    return restOf(lot, part, day, opening);
  });
  return { lots: after, taken, short: wanted > EPSILON ? wanted : 0 };
};

/** Bags by the date on them and when they were opened, as a lot that is planned by days. */
export const asDatedLot = (
  { quantity, useBy, openedAt }: BagsMoved,
  dayOf: (instant: string) => DayNumber,
): DatedLot => ({
  quantity,
  useBy: useBy === undefined ? null : dayNumber(useBy),
  openedOn: openedAt === undefined ? null : dayOf(openedAt),
});

/**
 * What there is of a material on hand, by its dates: what its lots do not account for has none.
 *
 * Example: of 9 bags on hand, 4 of them with the date 10 April, 5 have none.
 */
export const lotsOnHand = (material: DatedStock, dayOf: (instant: string) => DayNumber): DatedLot[] =>
  [{ quantity: undatedIn(material) }, ...(material.lots ?? [])]
    .filter(({ quantity }) => quantity > EPSILON)
    .map((lot) => asDatedLot(lot, dayOf));

/** For how many days it keeps once it has come: to the next day at least, since it may come in the evening; null for ever. */
export const keepsDays = ({ shelfLifeDays }: Pick<Material, 'shelfLifeDays'>): number | null =>
  shelfLifeDays === undefined ? null : Math.max(1, shelfLifeDays);

/** The last day of what comes on a day: so many days after it as it keeps; null where it keeps for ever. */
export const useByOf = (cameOn: DayNumber, material: Pick<Material, 'shelfLifeDays'>): DayNumber | null => {
  const keeps = keepsDays(material);
  return keeps === null ? null : cameOn + keeps;
};
