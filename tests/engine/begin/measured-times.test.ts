import { expect, test } from 'vitest';
import type { WorkRecord } from '../../../shared/work-record.ts';
import { measuredTimes, withMeasured } from '../../../src/engine/begin/measured-times.ts';
import { smallYard } from '../../support/small-yard.ts';

const at = (minute: number) =>
  `2027-04-10T${String(9 + Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}:00+01:00`;

const stripped = (minutes: number | null): WorkRecord => ({
  ...{
    kind: 'stripped',
    at: at(minutes ?? 0),
    mould: '900 no. 1',
    casting: 'panel-900',
    filledAt: at(0),
    cameOut: 'good',
  },
  ...(minutes === null ? {} : { workedFrom: at(0), tappedAt: at(minutes) }),
});

const poured = (minutes: number, moulds: number): WorkRecord => ({
  ...{ kind: 'poured', at: at(minutes), mix: 'thin', bags: 1, mixedFrom: at(0), tappedAt: at(minutes) },
  pours: Array.from({ length: moulds }, (_, no) => ({
    mould: `900 no. ${no + 1}`,
    casting: 'panel-900',
    filledAt: at(minutes),
  })),
});

test('what was tapped at both ends is measured; what was told of later, or as planned, is not', () => {
  const [time, ...others] = measuredTimes([9, 10, 14, null, 12, 30].map(stripped), smallYard());
  expect(others).toEqual([]);
  expect(time).toEqual({
    ...{ what: 'strip', id: 'panel-900', figure: 8, count: 5 },
    minutes: { lower: 10, median: 12, upper: 14 },
  });
});

test('a tap that comes before the other measures nothing', () => {
  const record = { ...stripped(5), workedFrom: at(9) } as WorkRecord;
  expect(measuredTimes([record], smallYard())).toEqual([]);
});

test('a batch is measured beside the figures of as many moulds as it filled', () => {
  // Mixing takes 10 minutes and a fill 7: 24 of two moulds, 17 of one.
  const [time] = measuredTimes([poured(30, 2), poured(36, 2), poured(30, 2)], smallYard());
  expect(time).toMatchObject({ what: 'batch', id: 'thin', figure: 24, count: 3, minutes: { median: 30 } });
  const after = withMeasured(smallYard(), time!);
  expect([after.mixes[0]!.mixMinutes, after.castings[0]!.fillMinutes]).toEqual([13, 9]);
});

test('mixing is measured apart from filling where it was tapped in between', () => {
  // Mixed for 12 minutes, then two moulds filled in 18.
  const records = [poured(30, 2), poured(30, 2)].map((record) => ({ ...record, mixedAt: at(12) }) as WorkRecord);
  const times = measuredTimes(records, smallYard());
  expect(times.map(({ what, id, figure, count, minutes }) => [what, id, figure, count, minutes.median])).toEqual([
    ['mix', 'thin', 10, 2, 12],
    ['fill', 'panel-900', 7, 2, 9],
  ]);
  const after = times.reduce(withMeasured, smallYard());
  expect([after.mixes[0]!.mixMinutes, after.castings[0]!.fillMinutes]).toEqual([12, 9]);
});

test('cleaning and setting up share what was measured as they shared the figures', () => {
  const time = { what: 'set up' as const, id: 'panel-900', figure: 18, count: 5 };
  const after = withMeasured(smallYard(), { ...time, minutes: { lower: 20, median: 24, upper: 26 } });
  expect([after.castings[0]!.cleanMinutes, after.castings[0]!.prepMinutes]).toEqual([8, 16]);
});
