import { describe, expect, test } from 'vitest';
import type { FinishedPieces } from '../../../shared/mould.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { Booked, Entry } from '../../../src/engine/book/entry.ts';
import { handOver, pack, unpack } from '../../../src/engine/book/pack.ts';
import type { FromFinished } from '../../../src/engine/book/work-done.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';

/** Saturday at 10:57, with some panels in the yard: the order is of two, and of two lengths of rod. */
const yardWith = (finished: Omit<FinishedPieces, 'casting'>[]): YardFile => {
  const yard = plannedYard();
  const panels = finished.map((one) => ({ casting: 'panel-900', ...one }));
  return { ...yard, yard: { ...yard.yard, now: saturday('10:57') }, finished: panels };
};
const order = '27-001';
const { lines } = plannedYard().orders[0]!;
/** A stick of 3000 is opened for two of 300 with a saw cut of 3 each. */
const rodCut = (at: string): Entry[] => {
  const why = { kind: 'cut', at, work: { order } } as const;
  return [
    { kind: 'stock', material: 'rod', quantity: -1, why },
    { kind: 'offcuts', material: 'rod', lengthMm: 2394, count: 1, why },
  ];
};
const packed = (yard: YardFile, planned: FromFinished[] = [], evenShort = false) =>
  pack(yard, { order, lines, planned, evenShort, doneAt: saturday('10:55') });
const entriesOf = (booked: Booked) => {
  if (!booked.ok) throw new Error(booked.faults[0]?.message);
  return booked.entries;
};
const takenFrom = (booked: Booked) =>
  entriesOf(booked).flatMap((entry) => (entry.kind === 'pieces out' ? [[entry.place, entry.count]] : []));
const short = (what: string) => ({ ok: false, faults: [{ path: 'evenShort', message: what }] });

describe('an order packed', () => {
  test('takes its pieces and its lengths, and frees what is set aside for it beyond that', () => {
    expect(entriesOf(packed(yardWith([{ count: 3 }])))).toEqual([
      { kind: 'pieces out', place: 0, count: 2 },
      ...rodCut(saturday('10:55')),
      { kind: 'freed', order },
      { kind: 'packed', order, at: saturday('10:55') },
    ]);
  });

  test('takes what the plan gives it, then its own, then those of nobody, the last place first', () => {
    const finished = [{ count: 1 }, { count: 1, order }, { count: 1 }];
    expect(takenFrom(packed(yardWith(finished), [{ finished: 2, count: 1 }]))).toEqual([
      [2, 1],
      [1, 1],
    ]);
    expect(takenFrom(packed(yardWith(finished)))).toEqual([
      [1, 1],
      [0, 1],
    ]);
  });

  test('takes none of another order, and none before it is fit to go out', () => {
    const message = 'By the stock book these are not in the yard, or not fit to go out yet: 1 × Panel 900.';
    const refused = short(`${message} Nothing was packed.`);
    expect(packed(yardWith([{ count: 1 }, { count: 1, order: '27-009' }]))).toEqual(refused);
    expect(packed(yardWith([{ count: 1 }, { count: 1, readyAt: saturday('10:58') }]))).toEqual(refused);
    expect(takenFrom(packed(yardWith([{ count: 1 }, { count: 1, readyAt: saturday('10:57') }])))).toHaveLength(2);
  });

  test('takes what is there where the maker has counted', () => {
    expect(takenFrom(packed(yardWith([{ count: 1 }]), [], true))).toEqual([[0, 1]]);
  });
});

describe('an order handed over', () => {
  const handed = (yard: YardFile, isPacked: boolean, evenShort = false) =>
    handOver(yard, { order, lines, planned: [], evenShort, isPacked, on: '2027-04-10' });
  const gone = { kind: 'handed over', order, on: '2027-04-10' };

  test('takes what it is made of, unless packing took it', () => {
    expect(entriesOf(handed(yardWith([{ count: 2 }]), false))).toEqual([
      { kind: 'pieces out', place: 0, count: 2 },
      ...rodCut(saturday('10:57')),
      { kind: 'freed', order },
      gone,
    ]);
    expect(entriesOf(handed(yardWith([{ count: 2 }]), true))).toEqual([{ kind: 'freed', order }, gone]);
  });

  test('is refused short of pieces, unless the maker has counted', () => {
    const message = 'By the stock book these are not in the yard yet: 2 × Panel 900. Nothing was handed over.';
    expect(handed(yardWith([]), false)).toEqual(short(message));
    expect(entriesOf(handed(yardWith([]), false, true)).at(-1)).toEqual(gone);
  });
});

describe('an order unpacked', () => {
  test('has its pieces set aside for it, fit to go out, and its lengths are offcuts', () => {
    expect(entriesOf(unpack(yardWith([]), { order, lines }))).toEqual([
      { kind: 'pieces in', lot: { casting: 'panel-900', readyAt: null, order }, count: 2 },
      {
        ...{ kind: 'offcuts', material: 'rod', lengthMm: 300, count: 2 },
        why: { kind: 'returned', at: saturday('10:57'), work: { order } },
      },
      { kind: 'unpacked', order, lines },
    ]);
  });

  test('gives back no entry of no pieces', () => {
    const none = [{ casting: 'panel-900', quantity: 0 }];
    expect(entriesOf(unpack(yardWith([]), { order, lines: none }))).toEqual([{ kind: 'unpacked', order, lines: none }]);
  });
});
