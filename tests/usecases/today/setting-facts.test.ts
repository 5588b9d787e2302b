import { expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { settingFacts } from '../../../src/usecases/today/setting-facts.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';

/** No. 1 full at 9:00 and no. 2 at 9:10, each kept wet for an hour; without weather both set in 75 minutes. */
const yard = (): YardFile => {
  const base = plannedYard();
  return plannedYard({
    yard: { ...base.yard, now: saturday('11:00') },
    mixes: base.mixes.map((mix) => ({ ...mix, attendMinutes: 60 })),
    inMould: [
      { mould: '900 no. 2', casting: 'panel-900', filledAt: saturday('09:10') },
      { mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:00') },
    ],
  });
};
const shown = (clock: string) =>
  settingFacts(yard(), minuteOf(saturday(clock)), new Map()).map(({ mould, wetUntil, mayFrom }) => [
    ...[mould, wetUntil?.slice(11, 16) ?? null, mayFrom?.slice(11, 16) ?? null],
  ]);

test('each piece has until when it is kept wet and from when it may be stripped, what comes next first', () => {
  expect(shown('09:20')).toEqual([
    ['900 no. 1', '10:00', '10:15'],
    ['900 no. 2', '10:10', '10:25'],
  ]);
});

test('what has come about is no longer waited for', () => {
  expect(shown('10:05')).toEqual([
    ['900 no. 2', '10:10', '10:25'],
    ['900 no. 1', null, '10:15'],
  ]);
  expect(shown('10:15')).toEqual([['900 no. 2', null, '10:25']]);
  expect(shown('10:25')).toEqual([]);
});
