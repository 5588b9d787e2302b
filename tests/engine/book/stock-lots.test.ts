import { describe, expect, test } from 'vitest';
import { type BagsMoved, bagsGone } from '../../../shared/bags.ts';
import { dayNumber } from '../../../shared/time.ts';
import { bagsTaken, withBags } from '../../../src/engine/book/stock-lots.ts';

const may2 = { useBy: '2027-05-02' };
const may9 = { useBy: '2027-05-09' };
const at = '2027-04-10T09:05:00+01:00';
const dayOf = (instant: string) => dayNumber(instant.slice(0, 10));
const stock = {
  onHand: 6,
  lots: [
    { quantity: 3, ...may2 },
    { quantity: 2, ...may9 },
  ],
};
const taken = (material: Parameters<typeof bagsTaken>[0], quantity: number) => bagsTaken(material, quantity, at, dayOf);
const after = (material: Parameters<typeof bagsTaken>[0], moved: readonly BagsMoved[]) =>
  moved.reduce((one, part) => withBags(one, part), material);

describe('bags that work takes', () => {
  test('are those of no known date, then the first to go past theirs', () => {
    expect(taken(stock, 2)).toEqual([{ quantity: -1 }, { quantity: -1, ...may2 }]);
    expect(taken(stock, 5)).toEqual([{ quantity: -3, ...may2 }, { quantity: -1 }, { quantity: -1, ...may9 }]);
  });

  test('leave an opened one where that keeps for its own days, and it goes first', () => {
    const bagwise = { ...stock, onHand: 5, openedDays: 14 };
    const moved = taken(bagwise, 0.5);
    expect(moved).toEqual([
      { quantity: -1, ...may2 },
      { quantity: 0.5, ...may2, openedAt: at },
    ]);
    const left = after(bagwise, moved);
    expect(left).toMatchObject({
      onHand: 4.5,
      lots: [
        { quantity: 0.5, ...may2, openedAt: at },
        { quantity: 2, ...may2 },
        { quantity: 2, ...may9 },
      ],
    });
    expect(taken(left, 0.5)).toEqual([{ quantity: -0.5, ...may2, openedAt: at }]);
  });

  test('are past their date only where there are no others, and then all the same', () => {
    const old = { useBy: '2027-04-01' };
    const material = {
      onHand: 3,
      lots: [
        { quantity: 2, ...old },
        { quantity: 1, ...may2 },
      ],
    };
    expect(taken(material, 1)).toEqual([{ quantity: -1, ...may2 }]);
    expect(taken(material, 2)).toEqual([
      { quantity: -1, ...may2 },
      { quantity: -1, ...old },
    ]);
    // Beyond what there is: of no known date, for the book to say that it was short.
    expect(taken(material, 4).at(-1)).toEqual({ quantity: -1 });
  });

  test('have no date where none is known', () => {
    expect(taken({ onHand: 3 }, 1)).toEqual([{ quantity: -1 }]);
  });
});

test('bags of which nobody says which they were', () => {
  expect(bagsGone(stock, 2)).toEqual([{ quantity: -1 }, { quantity: -1, ...may2 }]);
  expect(bagsGone(stock, 7).at(-1)).toEqual({ quantity: -1 });
  expect(withBags(stock, { quantity: -9 })).toEqual({ onHand: 0 });
  expect(withBags(stock, { quantity: 1, ...may9 })).toMatchObject({ onHand: 7, lots: [{}, { quantity: 3, ...may9 }] });
});
