import { describe, expect, test } from 'vitest';
import type { Archive, archive } from '../../shared/archive.ts';
import { linesGone, otherThanLogged } from './torture/as-logged.ts';
import { cutsAddUp } from './torture/cuts-add-up.ts';
import { type SheetSize, sheetsAddUp } from './torture/sheets-add-up.ts';
import { bagsKey, StockLog } from './torture/stock-log.ts';
import { torture } from './torture/torture.ts';

/** The server starts twice from its sources, which takes a busy machine a while. */
const PATIENCE_MS = 600_000;

test(
  'random acts on the running program, killed in the middle of one: book, plan and buying list add up',
  async () => {
    const done = await torture({ acts: 20, kills: 1, seed: 3 });
    expect(done.faults).toEqual([]);
    expect(done.kills).toBe(1);
    expect(done.acts).toBeGreaterThanOrEqual(20);
    expect(done.plansChecked).toBeGreaterThan(1);
    expect(done.lines).toBeGreaterThan(9);
  },
  PATIENCE_MS,
);

describe('the checks of that bite', () => {
  const figures = { stickMm: 3000, kerfMm: 2, usableMm: 190 };
  const before = { whole: 2, offcuts: new Map([[700, 1]]) };
  const pieces = new Map([[190, 4]]);

  test.each([
    ['from a whole one, the rest kept', { whole: 1, offcuts: new Map([700, 2232].map((mm) => [mm, 1])) }, true],
    [
      'some from the offcut',
      {
        whole: 1,
        offcuts: new Map([
          [2616, 1],
          [316, 1],
        ]),
      },
      true,
    ],
    ['a rest that is gone', { whole: 1, offcuts: new Map([[700, 1]]) }, false],
    ['a millimetre too many', { whole: 1, offcuts: new Map([700, 2233].map((mm) => [mm, 1])) }, false],
    ['nothing taken', before, false],
    ['a stick too many', { whole: 0, offcuts: new Map([700, 2232].map((mm) => [mm, 1])) }, false],
  ])('four of 190 mm: %s', (_, after, adds) => {
    expect(cutsAddUp(before, after as typeof before, pieces, figures)).toBe(adds);
  });

  test('sheets: whole ones and rests that are gone are no less than pieces and new rests', () => {
    const sheet = { widthMm: 1000, lengthMm: 2000, meshMm: 25 };
    const there = { whole: 3, rests: [{ widthMm: 1000, lengthMm: 900 }] };
    const piece = { widthMm: 170, lengthMm: 875 };
    const add = (whole: number, ...rests: SheetSize[]) => sheetsAddUp(there, { whole, rests }, [piece, piece], sheet);
    // Cut side by side from the rest, or from a whole one, in openings of 25 mm: 175 wide.
    expect(add(3, { widthMm: 650, lengthMm: 900 })).toBe(true);
    expect(add(2, ...there.rests, { widthMm: 650, lengthMm: 2000 }, { widthMm: 350, lengthMm: 1125 })).toBe(true);
    expect(add(3, ...there.rests)).toBe(false);
    expect(add(3, { widthMm: 700, lengthMm: 900 })).toBe(false);
    expect(add(4, { widthMm: 650, lengthMm: 900 })).toBe(false);
    expect(add(3, { widthMm: 650, lengthMm: 900 }, { widthMm: 1000, lengthMm: 10 })).toBe(false);
  });

  test('which bags are taken: the opened one, then those without a date, then the soonest that is not past its date', () => {
    const mortar = { id: 'mortar', opensBy: 1, openedDays: 5 };
    const log = new StockLog('Europe/Dublin');
    log.add(bagsKey('mortar', { useBy: '2027-04-01' }), 1);
    log.add(bagsKey('mortar', { useBy: '2027-05-01' }), 2);
    log.add(bagsKey('mortar', {}), 1);
    log.use(mortar, 1.5, '2027-04-10T09:00:00Z');
    expect(log.lotsOf('mortar')).toEqual([
      { quantity: 1, useBy: '2027-04-01' },
      { quantity: 1, useBy: '2027-05-01' },
      { quantity: 0.5, useBy: '2027-05-01', openedAt: '2027-04-10T09:00:00.000Z' },
    ]);
    log.use(mortar, 1, '2027-04-11T09:00:00Z');
    expect(log.lotsOf('mortar').map(({ quantity }) => quantity)).toEqual([1, 0.5]);
  });

  test('a gram that the yard has and nobody brought is told', () => {
    const log = new StockLog('Europe/Dublin');
    log.add(bagsKey('acid', {}), 500);
    const saved = { materials: [{ id: 'acid', onHand: 501 }], stockBook: [{ material: 'acid', quantity: 500 }] };
    expect(otherThanLogged(saved as unknown as ReturnType<typeof archive.parse>, log.amounts)).toEqual([
      'in the yard acid |  | : 501, and by what was done 500',
    ]);
  });

  test('a line of the book that is gone, or says otherwise, is told; one more is none', () => {
    const booked = (...quantities: number[]) =>
      ({ stockBook: quantities.map((quantity) => ({ material: 'acid', quantity })) }) as unknown as Archive;
    expect(linesGone(booked(1, -2), booked(1, -2, 2))).toEqual([]);
    expect(linesGone(booked(1, -2), booked(1))).toEqual(['line 1 of the book, acid, is another one']);
    expect(linesGone(booked(1, -2), booked(2, -2))).toHaveLength(1);
  });
});
