import { describe, expect, it } from 'vitest';
import { missingWith, whenThereByDates, withUse } from '../../../src/engine/decoder/dated-stock.ts';
import { type CompiledDates, type CompiledMaterial, NEVER } from '../../../src/engine/decoder/problem.ts';
import { isSameState, type Snapshot } from '../../../src/engine/decoder/snapshot.ts';
import { Stock } from '../../../src/engine/decoder/stock.ts';

/** Minutes of day n begin at n x 100. */
const dates = (more: Partial<CompiledDates> = {}): CompiledDates => ({
  ...{ lots: [], shelfLifeDays: undefined, opensBy: undefined, openedDays: undefined, gaps: [] },
  dayOf: (minute) => Math.floor(minute / 100),
  ...more,
});
const material = (onHand: number, of: CompiledDates, more: Partial<Omit<CompiledMaterial, 'dates'>> = {}) => ({
  ...{
    onHand,
    arrivals: [],
    comes: null,
    plentyFrom: NEVER,
    stickMm: 0,
    kerfMm: 0,
    offcuts: [],
    usableMm: 0,
    sheets: null,
    dates: of,
  },
  ...more,
});
const lot = (quantity: number, useBy: number | null) => ({ quantity, useBy, openedOn: null });

describe('what is there by its dates', () => {
  it('is there from the very minute it comes, and for as long as it keeps', () => {
    const bags = material(0, dates({ shelfLifeDays: 2 }), { arrivals: [{ at: 250, quantity: 3 }] });
    expect(whenThereByDates(bags, [], 3, 0)).toBe(250);
    expect(whenThereByDates(bags, [], 3, 499)).toBe(499);
    expect(whenThereByDates(bags, [], 3, 500)).toBe(NEVER);
    expect(whenThereByDates(bags, [], 4, 0)).toBe(NEVER);
  });

  it('is what others leave, be they sooner or later', () => {
    const bags = material(3, dates({ lots: [lot(2, 5), lot(1, 9)] }));
    const used = withUse(bags, withUse(bags, [], { at: 700, quantity: 1 }), { at: 100, quantity: 1 });
    expect(used.map(({ at }) => at)).toEqual([100, 700]);
    expect(missingWith(bags, used, 1, 300)).toBe(0);
    expect(missingWith(bags, used, 2, 300)).toBe(1);
    expect(missingWith(bags, used, 1, 650)).toBe(1);
  });

  it('may be the rest of a bag that another opens', () => {
    const bags = material(1, dates({ lots: [lot(1, null)], opensBy: 1, openedDays: 1 }));
    const used = withUse(bags, [], { at: 600, quantity: 0.5 });
    expect(whenThereByDates(bags, used, 0.5, 100)).toBe(600);
    expect(whenThereByDates(bags, used, 0.5, 550)).toBe(550);
    expect(whenThereByDates(bags, used, 0.5, 650)).toBe(650);
    expect(whenThereByDates(bags, used, 0.5, 800)).toBe(NEVER);
  });

  it('is bought but for the times at which it cannot be had, and then what is there is kept for them', () => {
    const gaps = [{ from: 300, to: 500 }];
    const bags = material(1, dates({ lots: [lot(1, null)], shelfLifeDays: 1, gaps }), { plentyFrom: 100 });
    expect(whenThereByDates(bags, [], 2, 200)).toBe(200);
    expect(whenThereByDates(bags, [], 2, 300)).toBe(500);
    expect(whenThereByDates(bags, [], 1, 300)).toBe(300);
    // One that is used before is the one that is there: what keeps goes first.
    expect(whenThereByDates(bags, withUse(bags, [], { at: 200, quantity: 1 }), 1, 300)).toBe(500);
    expect(whenThereByDates(bags, withUse(bags, [], { at: 400, quantity: 1 }), 1, 200)).toBe(500);
    const last = material(0, dates({ shelfLifeDays: 1, gaps: [{ from: 300, to: Infinity }] }), { plentyFrom: 100 });
    expect(whenThereByDates(last, [], 1, 0)).toBe(100);
    expect(whenThereByDates(last, [], 1, 300)).toBe(NEVER);
  });

  it('is bought once it can be', () => {
    const bags = material(1, dates({ lots: [lot(1, 3)] }), { plentyFrom: 450 });
    expect(whenThereByDates(bags, [], 1, 300)).toBe(300);
    expect(whenThereByDates(bags, [], 1, 400)).toBe(450);
    expect(missingWith(bags, [], 5, 450)).toBe(0);
  });
});

describe('a stock of what goes past its date', () => {
  const stockOf = () => new Stock([material(2, dates({ lots: [lot(2, 5)] }))], new Int32Array(1));
  const ask = (stock: Stock, quantity: number): Stock => {
    stock.ask();
    stock.add([{ material: 0, quantity }]);
    return stock;
  };

  it('knows what was used when it is put back to how it was', () => {
    const stock = stockOf();
    ask(stock, 1).use(100);
    const then = stock.save(200);
    ask(stock, 1).use(300);
    expect(ask(stock, 1).earliest(350)).toBe(NEVER);
    stock.restore(then);
    expect(ask(stock, 1).earliest(350)).toBe(350);
    expect(ask(stock, 2).earliest(350)).toBe(NEVER);
    stock.reset();
    expect(ask(stock, 2).earliest(350)).toBe(350);
  });

  it('says what is missing, and that it would be there if it kept', () => {
    expect(ask(stockOf(), 2).shortBy(500)).toBe(null);
    expect(ask(stockOf(), 2).shortBy(600)).toEqual({ material: 0, quantity: 2, isPastDate: true });
    expect(ask(stockOf(), 3).shortBy(500)).toEqual({ material: 0, quantity: 1, isPastDate: false });
  });
});

describe('two plans as far as they have come', () => {
  const snapshotWith = (at: number): Snapshot => {
    const bags = material(2, dates({ lots: [lot(2, 5)] }));
    const stock = new Stock([bags], new Int32Array(1));
    stock.ask();
    stock.add([{ material: 0, quantity: 1 }]);
    stock.use(at);
    const nothing = { waiting: [], open: 0, left: 0, batches: 0, pours: 0, deals: 0 };
    return {
      ints: new Int32Array(0),
      rack: { readyAt: new Int32Array(0), spaces: new Int32Array(0) },
      stock: stock.save(400),
      ...nothing,
    };
  };

  it('do not stand alike where bags were used at other times', () => {
    expect(isSameState(snapshotWith(100), snapshotWith(100))).toBe(true);
    expect(isSameState(snapshotWith(100), snapshotWith(300))).toBe(false);
  });
});
