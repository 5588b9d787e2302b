import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CompiledMaterial, NEVER } from '../../../src/engine/decoder/problem.ts';
import { Stock } from '../../../src/engine/decoder/stock.ts';

const material = (more: Partial<CompiledMaterial> = {}): CompiledMaterial => ({
  onHand: 5,
  arrivals: [],
  comes: null,
  plentyFrom: NEVER,
  stickMm: 0,
  kerfMm: 0,
  offcuts: [],
  usableMm: 0,
  sheets: null,
  dates: null,
  ...more,
});
const stockOf = (...materials: CompiledMaterial[]) => new Stock(materials, new Int32Array(materials.length));
const ask = (stock: Stock, quantity: number, times = 1) => {
  stock.ask();
  stock.add([{ material: 0, quantity }], times);
};

describe('five bags, three more at minute 100, any number from minute 1000 on', () => {
  const stock = () => stockOf(material({ arrivals: [{ at: 100, quantity: 3 }], plentyFrom: 1000 }));

  test.each([
    [5, 10, 10],
    [6, 10, 100],
    [8, 10, 100],
    [9, 10, 1000],
    [8, 200, 200],
    [99, 1500, 1500],
    [0, 10, 10],
  ])('%d of them, asked for from minute %d, are there at minute %d', (quantity, from, expected) => {
    const asked = stock();
    ask(asked, quantity);
    expect(asked.earliest(from)).toBe(expected);
  });

  test('what is used is gone, for all that is asked after it', () => {
    const used = stock();
    ask(used, 2, 2);
    used.use(10);
    ask(used, 2);
    expect(used.earliest(10)).toBe(100);
  });

  test('what is used once any number can be had leaves the rest as it was', () => {
    const used = stock();
    ask(used, 50);
    used.use(1000);
    ask(used, 5);
    expect(used.earliest(10)).toBe(10);
  });

  test('says what is short by when, and by how much', () => {
    const asked = stock();
    ask(asked, 7);
    expect(asked.shortBy(50)).toEqual({ material: 0, quantity: 2 });
    expect(asked.shortBy(100)).toBe(null);
  });

  test('a saved state comes back as it was', () => {
    const used = stock();
    const saved = used.save(0);
    ask(used, 5);
    used.use(10);
    used.restore(saved);
    ask(used, 5);
    expect(used.earliest(10)).toBe(10);
    used.use(10);
    used.reset();
    ask(used, 5);
    expect(used.earliest(10)).toBe(10);
  });
});

test('what cannot be bought and is not there never will be', () => {
  const stock = stockOf(material());
  ask(stock, 5.001);
  expect(stock.earliest(10)).toBe(NEVER);
});

describe('lengths of 900 mm that lose 3 mm to each cut', () => {
  const stock = (onHand: number, heldBack = 0) =>
    new Stock([material({ onHand, stickMm: 900, kerfMm: 3 })], [heldBack]);
  const cuts = (asked: Stock, lengthMm: number, count: number) => {
    asked.ask();
    asked.addCuts([{ material: 0, lengthMm, count }]);
  };

  // 450 + 3 + 447 = 900: both come off one length.
  test('the last cut needs no saw', () => {
    const one = stock(1);
    one.ask();
    one.addCuts([
      { material: 0, lengthMm: 450, count: 1 },
      { material: 0, lengthMm: 447, count: 1 },
    ]);
    expect(one.earliest(10)).toBe(10);
    cuts(one, 450, 2);
    expect(one.earliest(10)).toBe(NEVER);
  });

  // 297 + 3 + 297 + 3 + 297 = 897: three a length, four need two.
  test.each([
    [3, 1],
    [4, 2],
    [6, 2],
    [7, 3],
  ])('%d of 297 mm need %d', (count, sticks) => {
    const enough = stock(sticks);
    cuts(enough, 297, count);
    expect(enough.shortBy(10)).toBe(null);
    const tooFew = stock(sticks - 1);
    cuts(tooFew, 297, count);
    expect(tooFew.shortBy(10)).toEqual({ material: 0, quantity: 1 });
  });

  test('what is left over serves later cuts', () => {
    const one = stock(1);
    cuts(one, 500, 1);
    one.use(10);
    cuts(one, 397, 1);
    expect(one.earliest(10)).toBe(10);
    cuts(one, 398, 1);
    expect(one.earliest(10)).toBe(NEVER);
  });

  test('what is left of a length that comes later is not there for an earlier cut', () => {
    const later = new Stock(
      [material({ onHand: 0, arrivals: [{ at: 50, quantity: 1 }], stickMm: 900, kerfMm: 3 })],
      [0],
    );
    cuts(later, 297, 1);
    later.use(60);
    cuts(later, 297, 1);
    expect(later.earliest(45)).toBe(NEVER);
    cuts(later, 297, 1);
    expect(later.earliest(55)).toBe(55);
    const state = later.save(60);
    later.reset();
    later.restore(state);
    cuts(later, 297, 2);
    expect(later.earliest(60)).toBe(60);
  });

  test('rests of opened lengths are cut first, the shortest that is long enough', () => {
    const rests = new Stock([material({ onHand: 1, stickMm: 900, kerfMm: 3, offcuts: [600, 400] })], [0]);
    cuts(rests, 390, 1);
    rests.use(10);
    cuts(rests, 600, 1);
    rests.use(10);
    cuts(rests, 297, 3);
    expect(rests.earliest(10)).toBe(10);
    cuts(rests, 297, 4);
    expect(rests.shortBy(10)).toEqual({ material: 0, quantity: 1 });
    rests.reset();
    cuts(rests, 297, 6);
    expect(rests.earliest(10)).toBe(10);
  });

  test.each([
    [1, 6, 3],
    [2, 3, 1],
    [3, 1, 0],
  ])('%d held back leave the longest rest out once no whole length is left', (heldBack, tooMany, enough) => {
    const rests = new Stock([material({ onHand: 1, stickMm: 900, kerfMm: 3, offcuts: [600, 400] })], [heldBack]);
    cuts(rests, 297, tooMany);
    expect(rests.earliest(10)).toBe(NEVER);
    cuts(rests, 297, enough);
    expect(rests.earliest(10)).toBe(10);
  });

  test('a length held back is not counted on', () => {
    const held = stock(2, 1);
    cuts(held, 500, 2);
    expect(held.earliest(10)).toBe(NEVER);
  });

  test('asking twice gives the same answer: nothing is cut by a question', () => {
    const one = stock(1);
    cuts(one, 297, 3);
    expect([one.earliest(10), one.earliest(10)]).toEqual([10, 10]);
  });

  // Lengths wanted whole and lengths wanted cut come from the same heap.
  test('a length sold whole and a length cut are two', () => {
    const two = stock(1);
    two.ask();
    two.add([{ material: 0, quantity: 1 }]);
    two.addCuts([{ material: 0, lengthMm: 100, count: 1 }]);
    expect(two.shortBy(10)).toEqual({ material: 0, quantity: 1 });
  });
});

const arrival = fc.record({ at: fc.integer({ min: 0, max: 50 }), quantity: fc.integer({ min: 0, max: 4 }) });

test('a quantity is there at the first minute at which what has come in less what is used covers it', () => {
  fc.assert(
    fc.property(
      fc.array(arrival, { maxLength: 5 }),
      fc.integer({ min: 0, max: 6 }),
      fc.integer({ min: 0, max: 6 }),
      fc.integer({ min: 1, max: 8 }),
      fc.integer({ min: 0, max: 60 }),
      fc.option(fc.integer({ min: 0, max: 60 }), { nil: NEVER }),
      (arrivals, onHand, used, wanted, from, plentyFrom) => {
        const sorted = [...arrivals].sort((a, b) => a.at - b.at);
        const stock = stockOf(material({ onHand, arrivals: sorted, plentyFrom }));
        ask(stock, used);
        stock.use(-1);
        ask(stock, wanted);
        const level = (t: number) => arrivals.reduce((n, x) => (x.at <= t ? n + x.quantity : n), onHand - used);
        let expected = from;
        while (expected < Math.min(plentyFrom, 100) && level(expected) < wanted) expected++;
        expect(stock.earliest(from)).toBe(expected === 100 ? NEVER : expected);
      },
    ),
    { numRuns: 500 },
  );
});
