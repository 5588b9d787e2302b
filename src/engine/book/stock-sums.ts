import type { Material } from '../../../shared/material.ts';
import type { StockEntry } from '../../../shared/stock-entry.ts';

type Sums = Pick<Material, 'id' | 'onHand' | 'offcuts' | 'rests' | 'lots'>;

/** What lines of a stock book say wrongly: of which material, and of which bags offcuts or rests of it, in plain words. */
export interface StockFault {
  material: string;
  message: string;
}

/** To less than a gram or a millimetre of anything that is counted in a yard's units. */
const TOLERANCE = 1e-6;

type Named = Pick<StockEntry, 'lengthMm' | 'widthMm' | 'useBy' | 'openedAt'>;

const keyOf = ({ lengthMm, widthMm, useBy = '', openedAt = '' }: Named): string => {
  if (lengthMm === undefined) return `bags ${useBy} ${openedAt}`.trim();
  return widthMm === undefined ? `offcuts of ${lengthMm} mm` : `rests of ${widthMm} by ${lengthMm} mm`;
};

/** What is left of each, line by line; `seen` is told where it was less than nothing. */
const leftOf = (entries: readonly StockEntry[], seen: (entry: StockEntry, key: string) => void) => {
  const left = new Map<string, Map<string, number>>();
  for (const entry of entries) {
    const own = left.get(entry.material) ?? new Map<string, number>();
    const key = keyOf(entry);
    own.set(key, (own.get(key) ?? 0) + entry.quantity);
    if (own.get(key)! < -TOLERANCE) seen(entry, key);
    left.set(entry.material, own);
  }
  return left;
};

/**
 * Where a stock book does not come to what is in the yard: on hand, offcuts and rests are the sums of its lines, of each bag date,
 * each length and each size, and none of these was ever below nothing. No faults where all of that holds.
 *
 * Example: 3 bags were there and 2 were used, and the yard has 2: "the lines come to 1, and there are 2".
 */
export const stockFaults = (entries: readonly StockEntry[], materials: readonly Sums[]): StockFault[] => {
  const faults: StockFault[] = [];
  const left = leftOf(entries, ({ material }, key) => faults.push({ material, message: `${key} were below nothing` }));
  const compare = (material: string, what: string, sum: number, there: number) => {
    if (Math.abs(sum - there) > TOLERANCE)
      faults.push({ material, message: `${what}: the lines come to ${sum}, and there are ${there}` });
  };
  for (const { id, onHand, offcuts = [], rests = [], lots = [] } of materials) {
    const own = [...(left.get(id) ?? [])];
    const isLeft = (key: string) => key.startsWith('offcuts') || key.startsWith('rests');
    const bags = own.reduce((sum, [key, quantity]) => sum + (isLeft(key) ? 0 : quantity), 0);
    compare(id, 'on hand', bags, onHand);
    // What nobody knows the date of is what is left on hand.
    const counts = new Map(own.filter(([key]) => key !== 'bags'));
    const there = [...[...offcuts, ...rests].map((one) => ({ ...one, quantity: one.count })), ...lots];
    for (const one of there) counts.set(keyOf(one), (counts.get(keyOf(one)) ?? 0) - one.quantity);
    for (const [key, rest] of counts) compare(id, key, rest, 0);
  }
  return faults;
};
