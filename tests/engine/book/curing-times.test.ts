import { describe, expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { curingTimesOf, fillTimes, pieceMayBeStripped, readyFrom } from '../../../src/engine/book/curing-times.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';

/** Without temperatures age is time: a piece is stripped 75 minutes after it was full, and cured two hours after. */
const yardAt = (clock: string): YardFile => {
  const yard = plannedYard();
  return {
    ...{ ...yard, yard: { ...yard.yard, now: saturday(clock) } },
    mixes: yard.mixes.map((mix) => ({ ...mix, cureHours: 2 })),
  };
};
const at = (clock: string) => minuteOf(saturday(clock));
const piece = { mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:22') };

describe('the times of a piece', () => {
  test('count from when it was full', () => {
    const yard = yardAt('10:00');
    const times = curingTimesOf(yard);
    expect(times.mayStripFrom('panel-900', at('09:22'))).toBe(at('10:37'));
    expect(times.curedAt('panel-900', at('09:22'))).toBe(at('11:22'));
    expect(pieceMayBeStripped(piece, times)).toBe(at('10:37'));
    // Mixed by 9:15, workable for 20 minutes.
    expect(times.workableUntil(yard.mixes[0]!, at('09:15'))).toBe(at('09:35'));
    expect(() => times.curedAt('unknown', 0)).toThrow('No piece unknown with a mix');
  });

  test('are a hundred years off where it never sets', () => {
    const yard = { ...yardAt('10:00'), temperatures: [{ from: '2027-01-01', celsius: -200 }] };
    expect(curingTimesOf(yard).curedAt('panel-900', at('09:22'))).toBe(at('09:22') + 36_500 * 1440);
  });

  test('as an instant to be fit from is none once it is past: at 11:22 it is fit', () => {
    expect(readyFrom(yardAt('11:21'), piece)).toBe(saturday('11:22'));
    expect(readyFrom(yardAt('11:22'), piece)).toBeNull();
  });
});

describe('moulds filled one after another', () => {
  const { castings } = plannedYard();
  const castingOf = (id: string, fillMinutes: number) => ({ ...castings[0]!, id, fillMinutes });
  const book = { castings: [castingOf('short', 6), castingOf('long', 8)] };
  const filled = (...ids: string[]) => fillTimes(ids, at('10:00'), book);

  test('are full each its own minutes before the next, the last one at the end', () => {
    expect(filled('short', 'short', 'long')).toEqual([at('09:46'), at('09:52'), at('10:00')]);
    expect(filled('long', 'short', 'short')).toEqual([at('09:48'), at('09:54'), at('10:00')]);
  });

  test('that are none have no times, and a piece that is not there takes none', () => {
    expect(filled()).toEqual([]);
    expect(filled('short', 'unknown')).toEqual([at('10:00'), at('10:00')]);
  });
});
