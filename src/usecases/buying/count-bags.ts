import type { Tx } from '../../../db/open.ts';
import { moveInStock } from '../../../db/stores/stock-store.ts';
import { type BagsOf, bagsNamed, type Lots, undatedIn } from '../../../shared/bags.ts';
import { dayWords } from '../../../shared/day-words.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import { amountField, amountTyped } from '../typed/amount-typed.ts';
import type { BagsCounted } from '../typed/bags-counted.ts';

/** Bags of one date, how many of them the book has and how many were counted, in the material's unit. */
export interface BagsSeen {
  of: BagsOf;
  before: number;
  now: number;
}

/** What there is of a material: all of it, and what of it has a date or is opened. */
interface InBook {
  unit: string;
  onHand: number;
  lots: Lots;
}

const isThen = (openedAt: string | undefined, named: string): boolean =>
  named === '' ? openedAt === undefined : openedAt !== undefined && minuteOf(openedAt) === minuteOf(named);

/** The bags that a form names; those of no known date by neither. Null where the book has none such. */
const bagsMeant = ({ onHand, lots }: InBook, { useBy, openedAt }: BagsCounted): Omit<BagsSeen, 'now'> | null => {
  if (useBy === '' && openedAt === '') return { of: {}, before: undatedIn({ onHand, lots }) };
  const lot = lots.find((one) => (one.useBy ?? '') === useBy && isThen(one.openedAt, openedAt));
  return lot ? { of: bagsNamed(lot), before: lot.quantity } : null;
};

/** Each kind of bag that was counted, with what the book has of it. A fault is at the field of its bags. */
export const bagsSeen = (inBook: InBook, typed: readonly BagsCounted[], system: UnitSystem): Outcome<BagsSeen[]> => {
  const seen: BagsSeen[] = [];
  for (const one of typed) {
    const read = amountTyped(one.counted, inBook.unit, system);
    if (!read.ok) return refuse(one.field, read.reason);
    const meant = bagsMeant(inBook, one);
    if (!meant)
      return refuse(one.field, 'Those bags are not in the stock book any more. Leave it empty, and look again.');
    seen.push({ ...meant, now: read.value ?? meant.before });
  }
  return done(seen);
};

/** By how much they are more, or less, in the material's unit. */
export const moreBags = (seen: readonly BagsSeen[]): number =>
  seen.reduce((sum, { before, now }) => sum + now - before, 0);

const wordsOf = ({ useBy, openedAt }: BagsOf): string => {
  if (openedAt !== undefined) return `opened ${dayWords(openedAt.slice(0, 10))}`;
  return useBy === undefined ? 'of no known date' : `of ${dayWords(useBy)}`;
};

/** Those that are more or fewer than the book had, in words: "3 of Sun 2 May and 1 of no known date"; as they are now, or were before. */
export const bagsWords = (
  seen: readonly BagsSeen[],
  which: 'now' | 'before',
  { unit }: InBook,
  system: UnitSystem,
): string =>
  seen
    .filter(({ now, before }) => now !== before)
    .map((one) => `${amountField(one[which], unit, system)} ${wordsOf(one.of)}`)
    .join(' and ');

/** Books the difference of each kind of bag. */
export const bookBags = async (tx: Tx, material: string, seen: readonly BagsSeen[], at: string): Promise<void> => {
  for (const { of, before, now } of seen)
    if (now !== before) await moveInStock(tx, { ...of, material, kind: 'counted', at, quantity: now - before });
};
