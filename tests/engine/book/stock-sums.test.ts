import { describe, expect, test } from 'vitest';
import type { StockEntry } from '../../../shared/stock-entry.ts';
import { stockFaults } from '../../../src/engine/book/stock-sums.ts';

const at = '2027-04-08T09:00:00+01:00';
const line = (quantity: number, more: Partial<StockEntry> = {}): StockEntry => ({
  ...{ at, material: 'mortar', kind: 'used', quantity },
  ...more,
});
const mortar = (onHand: number) => [{ id: 'mortar', onHand }];
const messages = (...given: Parameters<typeof stockFaults>) => stockFaults(...given).map(({ message }) => message);

describe('a stock book', () => {
  test('comes to what is there, of fractions too', () => {
    expect(messages([line(0.1), line(0.2), line(-0.3)], mortar(0))).toEqual([]);
    expect(messages([line(3), line(-2)], mortar(2))).toEqual(['on hand: the lines come to 1, and there are 2']);
    expect(messages([], mortar(1))).toEqual(['on hand: the lines come to 0, and there are 1']);
  });

  test('was at no moment below nothing, of no bag date either', () => {
    expect(messages([line(-1), line(2)], mortar(1))).toEqual(['bags were below nothing']);
    const may = { useBy: '2027-05-02' };
    expect(messages([line(3), line(-1, may), line(1, may)], mortar(3))).toEqual(['bags 2027-05-02 were below nothing']);
    const lots = [{ quantity: 1, ...may }];
    expect(messages([line(3), line(2, may)], [{ ...mortar(5)[0]!, lots }])).toEqual([
      'bags 2027-05-02: the lines come to 1, and there are 0',
    ]);
  });

  test('has each length of offcuts for itself', () => {
    const rod = { id: 'mortar', onHand: 0, offcuts: [{ lengthMm: 700, count: 2 }] };
    expect(messages([line(2, { lengthMm: 700 })], [rod])).toEqual([]);
    expect(messages([line(2, { lengthMm: 701 })], [rod])).toEqual([
      'offcuts of 701 mm: the lines come to 2, and there are 0',
      'offcuts of 700 mm: the lines come to -2, and there are 0',
    ]);
  });
});
