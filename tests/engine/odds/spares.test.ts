import { describe, expect, test } from 'vitest';
import { chanceOfGood, spareFor, sparesFor, sparesWanted, withSpares } from '../../../src/engine/odds/spares.ts';

describe('spare pieces, by the binomial', () => {
  // 0.95^12 = 0.5404; with one more 0.95^13 + 13 * 0.05 * 0.95^12 = 0.5133 + 0.3512 = 0.8646.
  test('a set of 12 at 1 in 20: all good, and one more poured', () => {
    expect(chanceOfGood(12, 12, 0.05)).toBeCloseTo(0.54, 3);
    expect(chanceOfGood(12, 13, 0.05)).toBeCloseTo(0.865, 3);
    expect(spareFor('panel-900', 12, 0.05)).toMatchObject({ count: 12, poured: 13 });
  });

  // By hand: of 3 at 1 in 2, 2 or 3 good are 4 of 8 ways; none asked for is certain.
  test.each([
    [2, 3, 0.5, 0.5],
    [0, 3, 0.5, 1],
    [1, 1, 0.3, 0.7],
  ])('%i good of %i at %f', (good, poured, share, chance) => {
    expect(chanceOfGood(good, poured, share)).toBeCloseTo(chance, 12);
  });

  // A single piece at 1 in 50: 0.98 and 0.9996.
  test('is not told where it gains little', () => expect(spareFor('panel-900', 1, 0.02)).toBeNull());
});

const NO_RECORD = { pieces: [], sessions: { bad: 0, of: 0 }, deliveries: [] };
const at = '2027-04-10T09:00:00+01:00';
const times = {
  prepStart: at,
  prepEnd: at,
  fillStart: at,
  fillEnd: at,
  stripStart: at,
  stripEnd: at,
  pieceReadyAt: at,
};
const pours = (order: string, casting: string, count: number) =>
  Array.from({ length: count }, (_, n) => ({ id: `${order} ${n}`, batch: 'b', mould: 'm', casting, order, ...times }));
const planned = (id: string, completesOn: string) => ({
  ...{ id, completesOn, completesAt: at, daysLate: 0, fromFinished: [] },
});

describe('pieces to spare of a plan', () => {
  test('are one of a casting, until the last order that it could serve is there', () => {
    const plan = {
      pours: [
        ...pours('a', 'panel', 8),
        ...pours('b', 'panel', 11),
        ...pours('c', 'coping', 12),
        ...pours('d', 'pad', 1),
      ],
      strips: [{ mould: 'full', order: 'b', stripStart: at, stripEnd: at, pieceReadyAt: at }],
      orders: ['a', 'b', 'c', 'd'].map((id) => planned(id, id === 'a' ? '2027-05-15' : '2027-05-01')),
    };
    const order = { weight: 1, lines: [] };
    const yard = {
      // Of nobody's date nothing is spared; a single piece at 1 in 20 is not worth it.
      orders: [
        { id: 'a', due: '2027-05-08', ...order },
        { id: 'b', wanted: '2027-05-08', ...order },
        { id: 'c', ...order },
        { id: 'd', due: '2027-05-08', ...order },
      ],
      inMould: [{ mould: 'full', casting: 'panel', filledAt: at }],
    };
    expect(sparesWanted(yard, plan, NO_RECORD)).toEqual([
      { casting: 'panel', count: 1, by: '2027-05-15', orders: ['a', 'b'] },
    ]);
  });

  test('go by the record: of 400 pieces with one bad none is worth a turn of a mould', () => {
    const pieces = [{ mould: 'm', casting: 'panel', of: 400, mend: 0, scrap: 1 }];
    expect(sparesFor([['panel', 12]], { ...NO_RECORD, pieces })).toEqual([]);
    expect(sparesFor([['panel', 12]], NO_RECORD)).toMatchObject([{ poured: 13 }]);
  });

  test('are not asked for beside what stands ready anyway', () => {
    const [kept, spare] = [
      { casting: 'panel', count: 2 },
      { casting: 'panel', count: 1 },
    ];
    expect(withSpares([kept], [spare, { casting: 'coping', count: 1 }])).toEqual([
      { casting: 'coping', count: 1 },
      kept,
    ]);
  });
});
