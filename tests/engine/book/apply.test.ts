import { describe, expect, test } from 'vitest';
import type { YardFile } from '../../../shared/yard-file.ts';
import { apply } from '../../../src/engine/book/apply.ts';
import type { Entry } from '../../../src/engine/book/entry.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';

const yard = plannedYard();
const applied = (entry: Entry, start: YardFile = yard) => apply(start, [entry]);
const piece = { mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:22') };
const [first] = yard.moulds;

describe('a mould', () => {
  const patched = (patch: Extract<Entry, { kind: 'mould' }>['patch'], start = yard) =>
    applied({ kind: 'mould', mould: '900 no. 1', patch }, start).moulds;

  test('changes by what the patch says, and no other one does', () => {
    expect(patched({ condition: 'dirty', turnsSinceOil: 3 })).toEqual([
      { ...first, condition: 'dirty', turnsSinceOil: 3 },
      yard.moulds[1],
    ]);
  });

  test('has a day to be mended until a patch clears it; its note is not in a yard file', () => {
    const dated = patched({ condition: 'damaged', repairedOn: '2027-04-17', damageNote: 'split' });
    const damaged = { ...first, condition: 'damaged', repairedOn: '2027-04-17' };
    expect(dated[0]).toEqual(damaged);
    expect(patched({ prepped: false }, { ...yard, moulds: dated })[0]).toEqual(damaged);
    const mended = patched({ condition: 'ready', repairedOn: null }, { ...yard, moulds: dated })[0]!;
    expect(mended).toEqual(first);
    expect('repairedOn' in mended).toBe(false);
  });

  test('is filled and emptied', () => {
    const other = { ...piece, mould: '900 no. 2' };
    const full = apply(yard, [
      { kind: 'filled', piece },
      { kind: 'filled', piece: other },
    ]);
    expect(full.inMould).toEqual([piece, other]);
    expect(applied({ kind: 'emptied', mould: '900 no. 1' }, full).inMould).toEqual([other]);
  });
});

test('stock goes up and down, and never below nothing', () => {
  const why = { kind: 'counted', at: '2027-04-10T10:00:00+01:00' } as const;
  const stock = (quantity: number) =>
    applied({ kind: 'stock', material: 'mortar', quantity, why }).materials.map(({ onHand }) => onHand);
  expect(stock(2)).toEqual([5, 4, 3]);
  expect(stock(-1)).toEqual([2, 4, 3]);
  expect(stock(-3.5)).toEqual([0, 4, 3]);
});

describe('pieces', () => {
  test('come in last and go out by their place', () => {
    const lot = { casting: 'panel-900', readyAt: null, order: null };
    const more = applied({ kind: 'pieces in', lot, count: 2 });
    expect(more.finished.map(({ count }) => count)).toEqual([1, 2]);
    expect(applied({ kind: 'pieces out', place: 0, count: 1 }, more).finished.map(({ count }) => count)).toEqual([2]);
  });

  test('freed from an order are for nobody, in moulds too, and those of another order stay', () => {
    const other = { ...piece, mould: '900 no. 2', order: 'b' };
    const start = {
      ...yard,
      inMould: [{ ...piece, order: 'a' }, other],
      finished: [{ casting: 'panel-900', count: 1, order: 'a' }],
    };
    const freed = applied({ kind: 'freed', order: 'a' }, start);
    expect(freed.inMould).toEqual([piece, other]);
    expect(freed.finished).toEqual([{ casting: 'panel-900', count: 1 }]);
  });

  test('that wait to be mended are in no yard file', () => {
    expect(applied({ kind: 'aside no more', id: 1 })).toEqual(yard);
  });
});

describe('an order', () => {
  const order = '27-001';
  const other = { ...yard.orders[0]!, id: '27-002' };
  const start = { ...yard, orders: [...yard.orders, other] };

  test('that is packed asks for nothing, until it is unpacked', () => {
    const packed = applied({ kind: 'packed', order, at: saturday('10:57') }, start);
    expect(packed.orders).toEqual([{ ...yard.orders[0], lines: [] }, other]);
    const { lines } = yard.orders[0]!;
    expect(applied({ kind: 'unpacked', order, lines }, packed).orders).toEqual(start.orders);
  });

  test('that is handed over is gone', () => {
    expect(applied({ kind: 'handed over', order, on: '2027-04-10' }, start).orders).toEqual([other]);
  });
});
