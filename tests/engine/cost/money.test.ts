import { describe, expect, test } from 'vitest';
import { marginOf, priceWithMargin } from '../../../src/engine/cost/margin.ts';
import { fromMinor, halfEven, toMinor } from '../../../src/engine/cost/minor-units.ts';
import { paidFor } from '../../../src/engine/cost/paid-on.ts';
import { pricedLots, takingFrom } from '../../../src/engine/cost/priced-lots.ts';
import { shareOut } from '../../../src/engine/cost/share-out.ts';

describe('half-even', () => {
  test.each([
    [0.5, 0],
    [1.5, 2],
    [2.5, 2],
    [-0.5, 0],
    [-1.5, -2],
    [2.4999, 2],
    [2.5001, 3],
    [7, 7],
  ])('%d is %d', (amount, whole) => {
    expect(halfEven(amount)).toBe(whole);
  });

  // 1.005 is kept as 1.00499999999999989…: taken for what it is, it would be 100 either way; 1.015 tells them apart.
  test('a half that is missed by a hair is a half', () => {
    expect(toMinor(1.005, 'EUR')).toBe(100);
    expect(toMinor(1.015, 'EUR')).toBe(102);
    expect(toMinor(0.615, 'EUR')).toBe(62);
  });

  test('by the minor unit of each currency', () => {
    expect(toMinor(12.5, 'JPY')).toBe(12);
    expect(toMinor(1.2345, 'KWD')).toBe(1234);
    expect(fromMinor(1234, 'KWD')).toBe(1.234);
    expect(fromMinor(12, 'JPY')).toBe(12);
  });
});

describe('what must sum is shared by largest remainder', () => {
  test.each([
    { minor: 100, weights: [1, 1, 1], shares: [34, 33, 33] },
    { minor: 10, weights: [0.1, 0.2, 0.7], shares: [1, 2, 7] },
    { minor: 1, weights: [0, 0], shares: [1, 0] },
    { minor: -7, weights: [1, 1], shares: [-3, -4] },
    { minor: 0, weights: [], shares: [] },
  ])('$minor by $weights', ({ minor, weights, shares }) => {
    expect(shareOut(minor, weights)).toEqual(shares);
  });

  test('for any weights', () => {
    for (let n = 1; n < 40; n++) {
      const weights = Array.from({ length: n }, (_, i) => ((i * 7919 + n * 104_729) % 977) / 7);
      for (const minor of [1, 99, 12_345]) {
        const shares = shareOut(minor, weights);
        expect(shares.reduce((sum, one) => sum + one, 0)).toBe(minor);
        const all = weights.reduce((sum, one) => sum + one, 0);
        for (const [i, share] of shares.entries())
          if (all > 0) expect(Math.abs(share - (minor * weights[i]!) / all)).toBeLessThan(1);
      }
    }
  });
});

describe('bags at the price paid for them', () => {
  const arrived = [
    { quantity: 6, on: '2027-03-01', price: 12_900 },
    { quantity: 4, on: '2027-04-01', price: 9000 },
  ];

  test('what came first is used first, and of a delivery all that was paid is spent', () => {
    const take = takingFrom({ lots: pricedLots(10, arrived, []), unitPrice: null });
    expect([take(4), take(4), take(2)]).toEqual([
      { price: 8600, unpriced: 0 },
      { price: 4300 + 4500, unpriced: 0 },
      { price: 4500, unpriced: 0 },
    ]);
  });

  test('in however many bits', () => {
    const take = takingFrom({ lots: [{ quantity: 3, used: 0, price: 1000 }], unitPrice: null });
    const bits = Array.from({ length: 30 }, () => take(0.1).price);
    expect(bits.reduce((sum, one) => sum + one, 0)).toBe(1000);
  });

  test('what is left of a delivery costs what is left of its price', () => {
    const take = takingFrom({ lots: pricedLots(5, arrived, []), unitPrice: null });
    expect(take(1)).toEqual({ price: 2150, unpriced: 0 });
    expect(take(4)).toEqual({ price: 9000, unpriced: 0 });
  });

  test('what no delivery accounts for costs the price of the stock book, and comes first', () => {
    const take = takingFrom({ lots: pricedLots(11, arrived, []), unitPrice: 2000 });
    expect(take(1)).toEqual({ price: 2000, unpriced: 0 });
    expect(take(6)).toEqual({ price: 12_900, unpriced: 0 });
  });

  test('what comes later is used after what is there, and what is beyond all of it costs the price of the book', () => {
    const coming = [{ quantity: 1, on: '2027-05-01', price: 2500 }];
    const take = takingFrom({ lots: pricedLots(1, arrived, coming), unitPrice: 2000 });
    expect([take(1).price, take(1).price, take(2).price]).toEqual([2250, 2500, 4000]);
  });

  // What came last goes off first, and so is used before what came first; bags without a date are used before both.
  test('bags with a date cost what was paid for the delivery of that date, in the order in which they are used', () => {
    const dated = [
      { quantity: 4, on: '2027-03-01', price: 8000, useBy: '2027-09-01' },
      { quantity: 4, on: '2027-04-01', price: 10_000, useBy: '2027-07-01' },
      { quantity: 5, on: '2027-04-02', price: 15_000 },
    ];
    const lots = [
      { quantity: 2, useBy: '2027-07-01' },
      { quantity: 4, useBy: '2027-09-01' },
    ];
    const take = takingFrom({ lots: pricedLots(7, dated, [], lots), unitPrice: null });
    expect([take(1).price, take(2).price, take(4).price]).toEqual([3000, 5000, 8000]);
    const of = (on: string) => paidFor(2, { dates: [on], on: '2027-04-10' }, dated, null).price;
    // By the date on the bag, by the day it came, and where that delivery had bags with a date, by the last that came.
    expect([of('2027-09-01'), of('2027-04-02'), of('2027-03-01')]).toEqual([4000, 6000, 6000]);
  });

  test('a price that nobody said is told, not counted as nothing', () => {
    const unsaid = [{ quantity: 2, on: '2027-04-01', price: null }];
    const take = takingFrom({ lots: pricedLots(2, unsaid, []), unitPrice: null });
    expect(take(3)).toEqual({ price: 0, unpriced: 3 });
  });

  test('a gift costs nothing, and that is known', () => {
    const take = takingFrom({ lots: pricedLots(2, [{ quantity: 2, on: '2027-04-01', price: 0 }], []), unitPrice: 500 });
    expect(take(2)).toEqual({ price: 0, unpriced: 0 });
  });
});

test('a margin is a share of the price', () => {
  expect(priceWithMargin(7000, 0.3)).toBe(10_000);
  expect(priceWithMargin(9951, 0.3)).toBe(14_216);
  expect(marginOf(10_000, 12_000)).toBeCloseTo(-0.2, 12);
  expect(marginOf(0, 12_000)).toBeNull();
});
