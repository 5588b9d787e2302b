import { expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import { bagDatesOf } from '../../../src/engine/book/bag-dates.ts';
import { saidOfBatch } from '../../../src/engine/book/mixing-begun.ts';
import { pour } from '../../../src/engine/book/pour.ts';
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

const MORTAR = { id: 'mortar', name: 'Fast-setting mortar', unit: 'bag', onHand: 4 };

const mixed = (materials: Partial<typeof MORTAR> & { lots?: { quantity: number; useBy: string }[] }, told = {}) => {
  const yard = smallYard({ materials: [{ ...MORTAR, ...materials }, ...smallYard().materials.slice(1)] });
  const work = { pours: [filled], bags: 1, ...told };
  const booked = pour({ ...yard, yard: { ...yard.yard, now: filled.filledAt } }, work);
  if (!booked.ok) throw new Error(JSON.stringify(booked.faults));
  const deliveries = new Map([
    [
      'mortar',
      [
        { quantity: 2, arrivedOn: '2027-04-08', useBy: '2027-06-01' },
        { quantity: 20, arrivedOn: '2027-04-01' },
      ],
    ],
  ]);
  return bagDatesOf(work, yard, deliveries, booked.entries).filter(({ material }) => material === 'mortar');
};

const JUNE = { quantity: 1.5, useBy: '2027-06-01' };
const MAY = { quantity: 0.5, useBy: '2027-05-01' };

test.each([
  ['bags without a date are of the day they came, and of no delivery whose bags had one', {}, [{ on: '2027-04-01' }]],
  ['what the book took, the soonest first', { onHand: 2, lots: [JUNE, MAY] }, ['2027-05-01', '2027-06-01']],
  ['undated ones go before dated ones', { onHand: 3.5, lots: [JUNE] }, [{ on: '2027-04-01' }]],
] as const)('%s', (_, materials, dates) => {
  const expected = dates.map((one) => (typeof one === 'string' ? { on: one, dated: true } : one));
  expect(mixed(materials as never)).toEqual(expected.map((one) => ({ material: 'mortar', ...one })));
});

test('a date read off the bag stands in the place of what the stock book has', () => {
  const told = { told: { bagDates: ['2027-02-03'] } };
  expect(mixed({ onHand: 1.5, lots: [JUNE] }, told)).toEqual([{ material: 'mortar', on: '2027-02-03', typed: true }]);
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
  expect(saidOfBatch(records, pours, { kind: 'mixing begun', by: minuteOf(at(full)) })).toBe(from);
});
