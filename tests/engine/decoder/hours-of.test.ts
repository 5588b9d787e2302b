import { expect, test } from 'vitest';
import type { YardFile } from '../../../shared/yard-file.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { hoursOf } from '../../../src/engine/decoder/hours-of.ts';
import { smallYard } from '../../support/small-yard.ts';

const yard = smallYard();
const withFigures = (figures: Partial<YardFile['yard']>): YardFile => ({ ...yard, yard: { ...yard.yard, ...figures } });

/** Worked out for lists that nobody has asked about before. */
const anew = (one: YardFile) => hoursOf({ ...one, work: [...one.work] });

test('hours are shared by yards that differ in anything but hours', () => {
  expect(hoursOf({ ...yard, orders: [], moulds: [] })).toBe(hoursOf(yard));
});

test.each<[string, YardFile]>([
  ['what the clock shows', withFigures({ now: '2027-04-10T09:00:00+01:00' })],
  ['a zone', withFigures({ timeZone: 'Europe/Vienna' })],
  ['a horizon', withFigures({ horizonDays: 20 })],
  ['minutes to set up', withFigures({ setUpMinutes: 20 })],
  ['minutes to clear up', withFigures({ clearUpMinutes: 15 })],
  ['days of hand-over', withFigures({ handoverDays: ['TU'] })],
  ['a day off', { ...yard, closed: ['2027-04-17'] }],
  ['hours on one day', { ...yard, extra: [{ ...yard.work[0]!, date: '2027-04-13' }] }],
])('they are others with %s of its own', (_, other) => {
  const before = hoursOf(yard);
  expect(hoursOf(other)).toEqual(anew(other));
  expect(hoursOf(other)).not.toEqual(before);
  expect(hoursOf(yard)).toEqual(before);
});

test('work under way takes nobody out of the hours of other yards', () => {
  const begunYard: YardFile = {
    ...withFigures({ now: '2027-04-10T08:05:00+01:00' }),
    begun: {
      ...{ batches: [], pours: [], strips: [], packs: [], coats: [] },
      preps: [
        {
          ...{ mould: '900 no. 1', casting: 'panel-900' },
          ...{ prepStart: '2027-04-10T08:00:00+01:00', prepEnd: '2027-04-10T08:12:00+01:00' },
        },
      ],
    },
  };
  const { begun: _begun, ...without } = begunYard;
  expect(Array.from(compile(begunYard).shifts.people.slice(0, 8))).toEqual([0, 0, 0, 0, 0, 0, 0, 1]);
  expect(Array.from(compile(without).shifts.people.slice(0, 8))).toEqual([1, 1, 1, 1, 1, 1, 1, 1]);
});
