import { describe, expect, test } from 'vitest';
import type { YardFile } from '../../../shared/yard-file.ts';
import { apply } from '../../../src/engine/book/apply.ts';
import { withOffcuts } from '../../../src/engine/book/offcuts.ts';
import type { StickCut } from '../../../src/engine/book/sticks-cut.ts';
import { giveBackToStock, shortOf, takeFromStock } from '../../../src/engine/book/stock-taken.ts';
import { plannedYard } from '../../support/planned-yard.ts';

/* Rods of 3000 mm that lose 3 mm to a cut; the shortest pin that the yard needs is of 300. */

interface Rods {
  onHand: number;
  offcuts: number[];
}

const yardWith = ({ onHand, offcuts }: Rods): YardFile => {
  const yard = plannedYard();
  const rod = yard.materials.find(({ id }) => id === 'rod')!;
  const held = offcuts.reduce((one, lengthMm) => withOffcuts(one, lengthMm, 1), { ...rod, onHand });
  return { ...yard, materials: yard.materials.map((one) => (one === rod ? held : one)) };
};
const pins = (count: number, lengthMm = 300) => ({ goods: [], cuts: [{ material: 'rod', lengthMm, count }] });
const rodsIn = (yard: YardFile): Rods => {
  const { onHand, offcuts = [] } = yard.materials.find(({ id }) => id === 'rod')!;
  return { onHand, offcuts: offcuts.flatMap(({ lengthMm, count }) => new Array<number>(count).fill(lengthMm)) };
};
const FOR = { at: '2027-04-10T10:00:00+01:00' };
const rodsAfter = (rods: Rods, taken: ReturnType<typeof pins>, named: StickCut[] = []): Rods => {
  const yard = yardWith(rods);
  return rodsIn(apply(yard, takeFromStock(yard, taken, named, FOR)));
};
const from = (count: number, offcutMm?: number): StickCut => ({
  ...{ material: 'rod', cuts: [{ lengthMm: 300, count }] },
  ...(offcutMm === undefined ? {} : { offcutMm }),
});

describe('lengths that are cut', () => {
  test('open a stick and leave the rest of it', () => {
    expect(rodsAfter({ onHand: 2, offcuts: [] }, pins(4))).toEqual({ onHand: 1, offcuts: [1788] });
  });

  test('come from rests first, the shortest that is long enough', () => {
    expect(rodsAfter({ onHand: 2, offcuts: [1788, 700] }, pins(2))).toEqual({ onHand: 2, offcuts: [1788] });
    expect(rodsAfter({ onHand: 2, offcuts: [1788, 350] }, pins(2))).toEqual({ onHand: 2, offcuts: [1485] });
  });

  test('leave nothing of what is too short for any pin', () => {
    expect(rodsAfter({ onHand: 1, offcuts: [] }, pins(9))).toEqual({ onHand: 0, offcuts: [] });
    expect(rodsAfter({ onHand: 1, offcuts: [] }, pins(8))).toEqual({ onHand: 0, offcuts: [576] });
    expect(rodsAfter({ onHand: 1, offcuts: [] }, pins(1, 2698))).toEqual({ onHand: 0, offcuts: [] });
    expect(rodsAfter({ onHand: 1, offcuts: [] }, pins(1, 2697))).toEqual({ onHand: 0, offcuts: [300] });
  });

  test('come from the sticks that are named for them', () => {
    const rods = { onHand: 2, offcuts: [1788, 700] };
    expect(rodsAfter(rods, pins(2), [from(2, 1788)])).toEqual({ onHand: 2, offcuts: [1182, 700] });
    expect(rodsAfter(rods, pins(2), [from(1, 700), from(1)])).toEqual({ onHand: 1, offcuts: [2697, 1788, 397] });
  });

  test('come from what fits best where the named ones are not there, or are named for others', () => {
    const rods = { onHand: 1, offcuts: [700] };
    for (const named of [[from(2, 699)], [from(1, 700), from(1, 700)], [from(3)], [from(1), from(1)]])
      expect(rodsAfter(rods, pins(2), named)).toEqual({ onHand: 1, offcuts: [] });
  });

  test('that the book has no stick for leave no rest: nobody knows what they were cut from', () => {
    expect(rodsAfter({ onHand: 0, offcuts: [] }, pins(2))).toEqual({ onHand: 0, offcuts: [] });
    expect(shortOf(yardWith({ onHand: 0, offcuts: [299] }), pins(1), [])).toBe('Rod 12 mm');
    expect(shortOf(yardWith({ onHand: 0, offcuts: [300] }), pins(1), [])).toBeNull();
  });

  test('given back are offcuts of their length', () => {
    const yard = yardWith({ onHand: 1, offcuts: [700] });
    expect(rodsIn(apply(yard, giveBackToStock(pins(2), { ...FOR, kind: 'returned' })))).toEqual({
      onHand: 1,
      offcuts: [700, 300, 300],
    });
    expect(giveBackToStock(pins(0), { ...FOR, kind: 'returned' })).toEqual([]);
  });
});

// The cases that were found: eight of 190 from one stick, four of them cut; and 1600 from each of three.
describe('the rest of an opened stick', () => {
  test('serves what it is long enough for, and nothing else', () => {
    const sleeves = { ...pins(4, 190), cuts: [{ material: 'rod', lengthMm: 190, count: 4 }] };
    const half = yardWith({ onHand: 0, offcuts: [2228] });
    expect(shortOf(half, sleeves, [])).toBeNull();
    const ends = yardWith({ onHand: 0, offcuts: [1397, 1397, 1397] });
    expect(shortOf(ends, pins(1, 1600), [])).toBe('Rod 12 mm');
  });
});
