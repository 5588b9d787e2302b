import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { supplyPurposes } from '../../../src/usecases/buying/supply-purposes.ts';

const use = (quantity: number, ...orders: (string | null)[]) => ({ at: 0, quantity, orders });
const supply = (at: number, quantity: number) => ({ at, quantity });

describe('whom a supply is for', () => {
  test('those whose uses come after what is in the yard, in order of time', () => {
    const uses = [use(3, 'A'), use(4, 'B'), use(2, 'C')];
    expect(supplyPurposes(5, uses, [supply(1, 2), supply(2, 3)])).toEqual([
      { orders: ['B'], keep: false },
      { orders: ['C'], keep: false },
    ]);
  });

  test('the soonest supply meets the earliest use, in whatever order they are given', () => {
    const uses = [use(1, 'A'), use(1, 'B')];
    expect(supplyPurposes(0, uses, [supply(9, 1), supply(3, 1)]).map(({ orders }) => orders)).toEqual([['B'], ['A']]);
  });

  test('several, when it covers several uses, and each once', () => {
    expect(supplyPurposes(0, [use(1, 'A', 'B'), use(1, 'B', null)], [supply(0, 2)])).toEqual([
      { orders: ['A', 'B', null], keep: false },
    ]);
  });

  test('what is always kept, when less than that is there', () => {
    expect(supplyPurposes(-2, [use(1, 'A')], [supply(0, 2), supply(1, 1)])).toEqual([
      { orders: [], keep: true },
      { orders: ['A'], keep: false },
    ]);
  });

  test('nobody, when nothing more is used', () => {
    expect(supplyPurposes(4, [use(4, 'A')], [supply(0, 10)])).toEqual([{ orders: [], keep: false }]);
  });

  test('amounts that do not add up to the last bit are not for one order too many', () => {
    const uses = [use(0.1, 'A'), use(0.2, 'A'), use(0.3, 'B')];
    expect(supplyPurposes(0.3, uses, [supply(0, 1)])[0]?.orders).toEqual(['B']);
  });

  test('every use that the yard does not cover is some supply’s, when there is enough', () => {
    const amount = fc.integer({ min: 1, max: 9 });
    fc.assert(
      fc.property(
        fc.array(amount, { minLength: 1, maxLength: 8 }),
        fc.nat(20),
        fc.array(amount, { maxLength: 8 }),
        (used, free, supplied) => {
          const uses = used.map((quantity, index) => use(quantity, String(index)));
          const last = 1000;
          const purposes = supplyPurposes(free, uses, [
            ...supplied.map((quantity, at) => supply(at, quantity)),
            supply(last, 1000),
          ]);
          const named = new Set(purposes.flatMap(({ orders }) => orders));
          const ends = used.map((_, index) => used.slice(0, index + 1).reduce((sum, one) => sum + one, 0));
          expect([...named].sort()).toEqual(ends.flatMap((end, index) => (end > free ? [String(index)] : [])).sort());
        },
      ),
    );
  });
});
