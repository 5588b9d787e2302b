import { expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import { bagDatesOf } from '../../../src/engine/book/bag-dates.ts';
import { mixingBegun } from '../../../src/engine/book/mixing-begun.ts';
import { lotsUsed } from '../../../src/engine/buy/lots-used.ts';
import { smallYard } from '../../support/small-yard.ts';

const at = (clock: string) => `2027-04-10T${clock}:00+01:00`;
const filled = { mould: '900 no. 1', casting: 'panel-900', order: null, coated: false, filledAt: at('09:00') };
const came = [
  { quantity: 6, arrivedOn: '2027-04-09' },
  { quantity: 6, arrivedOn: '2027-04-01' },
];

test.each([
  ['what came first is used first', 10, 5, ['2027-04-01', '2027-04-09']],
  ['what no delivery accounts for is used before that, and has no day', 14, 3, ['2027-04-01']],
  ['all of it is of nobody knows when', 14, 2, []],
  ['nothing there is nothing used', 0, 2, []],
] as const)('%s', (_, onHand, quantity, days) => {
  expect(lotsUsed(onHand, quantity, came)).toEqual(days);
});

test('a date read off the bag stands in the place of what the stock book has', () => {
  const yard = smallYard();
  const deliveries = new Map([['mortar', [{ quantity: 20, arrivedOn: '2027-04-01' }]]]);
  const work = { pours: [filled], bags: 1 };
  expect(bagDatesOf(work, yard, deliveries)).toEqual([{ material: 'mortar', on: '2027-04-01' }]);
  expect(bagDatesOf({ ...work, told: { bagDates: ['2027-02-03'] } }, yard, deliveries)).toEqual([
    { material: 'mortar', on: '2027-02-03', typed: true },
  ]);
});

const mixing: WorkRecord = { kind: 'mixing begun', at: at('09:00'), moulds: ['A', 'B'] };
const poured: WorkRecord = {
  ...{ kind: 'poured', at: at('09:20'), mix: 'thin', bags: 1 },
  pours: [{ mould: 'A', casting: 'panel-900', filledAt: at('09:20') }],
};

test.each([
  ['of some of the moulds that were meant', [mixing], ['A'], '09:20', at('09:00')],
  ['of another mould', [mixing], ['C'], '09:20', null],
  ['ended by a batch since', [mixing, poured], ['A'], '10:30', null],
  ['told of for a time before it', [mixing], ['A'], '08:40', null],
  ['long ago', [mixing], ['A'], '22:00', null],
] as const)('the mixing of a batch, where it was begun %s', (_, records, moulds, full, from) => {
  const pours = moulds.map((mould) => ({ mould }));
  expect(mixingBegun(records, pours, minuteOf(at(full)))).toBe(from);
});
