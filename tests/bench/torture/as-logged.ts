import { isDeepStrictEqual } from 'node:util';
import type { Archive } from '../../../shared/archive.ts';
import { bagsKey, offcutKey, restKey } from './stock-log.ts';

/** To less than a gram of what is counted in grams, and a millimetre of a length. */
const LITTLE = 1e-6;

type Amounts = ReadonlyMap<string, number>;

const added = (amounts: Map<string, number>, key: string, quantity: number): void => {
  amounts.set(key, (amounts.get(key) ?? 0) + quantity);
};

/** What a saved yard says is there, of each bags and each length. */
const amountsThere = ({ materials }: Archive): Amounts => {
  const amounts = new Map<string, number>();
  for (const { id, onHand, lots = [], offcuts = [], rests = [] } of materials) {
    added(
      amounts,
      bagsKey(id, {}),
      lots.reduce((left, { quantity }) => left - quantity, onHand),
    );
    for (const lot of lots) added(amounts, bagsKey(id, lot), lot.quantity);
    for (const { lengthMm, count } of offcuts) added(amounts, offcutKey(id, lengthMm), count);
    for (const { widthMm, lengthMm, count } of rests) added(amounts, restKey(id, widthMm, lengthMm), count);
  }
  return amounts;
};

type Line = NonNullable<Archive['stockBook']>[number];

const keyOf = ({ material, lengthMm, widthMm, ...bags }: Line): string => {
  if (lengthMm === undefined) return bagsKey(material, bags);
  return widthMm === undefined ? offcutKey(material, lengthMm) : restKey(material, widthMm, lengthMm);
};

/** What the lines of its stock book come to, of the same. */
const amountsBooked = ({ stockBook = [] }: Archive): Amounts => {
  const amounts = new Map<string, number>();
  for (const line of stockBook) added(amounts, keyOf(line), line.quantity);
  return amounts;
};

const differences = (what: string, one: Amounts, other: Amounts): string[] =>
  [...new Set([...one.keys(), ...other.keys()])].flatMap((key) => {
    const [left, right] = [one.get(key) ?? 0, other.get(key) ?? 0];
    return Math.abs(left - right) <= LITTLE ? [] : [`${what} ${key}: ${left}, and by what was done ${right}`];
  });

/** Where what is in the yard, or what its stock book comes to, is not what all that was done comes to; none where it is. */
export const otherThanLogged = (yard: Archive, logged: Amounts): string[] => [
  ...differences('in the yard', amountsThere(yard), logged),
  ...differences('in the book', amountsBooked(yard), logged),
];

/** Lines of the stock book that were there before an act, and are not after it, or say otherwise then; none, whatever was undone. */
export const linesGone = ({ stockBook: before = [] }: Archive, { stockBook: after = [] }: Archive): string[] =>
  before.flatMap((line, place) =>
    isDeepStrictEqual(line, after[place]) ? [] : [`line ${place} of the book, ${line.material}, is another one`],
  );
