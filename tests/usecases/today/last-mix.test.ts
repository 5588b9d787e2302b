import { describe, expect, test } from 'vitest';
import { dayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { sessionsOfDay } from '../../../src/usecases/plan/hours-of-day.ts';
import { lastMixes } from '../../../src/usecases/today/last-mix.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';

const lastIn = (changes: Partial<YardFileInput> = {}, plan = handPlan()) => {
  const yard = plannedYard(changes);
  return lastMixes(plan, yard, sessionsOfDay(yard, dayNumber('2027-04-10'))[0]!);
};
const mix = plannedYard().mixes[0]!;
const hours = (end: string, allows: ('prep' | 'batch' | 'strip' | 'pack')[]) => ({
  rule: 'FREQ=WEEKLY;BYDAY=SA',
  from: '2027-01-02',
  start: '08:00',
  end,
  allows,
});

describe('the last mix of a session', () => {
  test('leaves time to mix, to fill and to wash out before clearing up', () => {
    // 11:45 less 10 to mix, 14 to fill and 5 to wash.
    expect(lastIn({ mixes: [{ ...mix, washMinutes: 5 }] })).toEqual([
      { mix: 'Thin panel mix', at: minuteOf(saturday('11:16')) },
    ]);
  });

  test('leaves time to keep the last piece wet before the end', () => {
    // 12:00 less 10, 14 and 60.
    expect(lastIn({ mixes: [{ ...mix, washMinutes: 5, attendMinutes: 60 }] })[0]?.at).toBe(minuteOf(saturday('10:36')));
  });

  test('ends with the hours in which mixing is allowed', () => {
    const work = [hours('12:00', ['strip']), hours('10:30', ['prep', 'batch'])];
    expect(lastIn({ work })[0]?.at).toBe(minuteOf(saturday('10:06')));
    expect(lastIn({ work: [hours('12:00', ['strip'])] })).toEqual([]);
  });

  test('is for a batch as large as the last one planned, so it is never before that', () => {
    const plan = handPlan();
    const later = {
      prepStart: saturday('11:00'),
      prepEnd: saturday('11:12'),
      fillStart: saturday('11:30'),
      fillEnd: saturday('11:37'),
    };
    plan.pours.push({ ...plan.pours[0]!, id: 'P3', batch: 'B2', ...later });
    plan.batches.unshift({
      ...plan.batches[0]!,
      id: 'B2',
      start: saturday('11:20'),
      mixEnd: saturday('11:30'),
      end: saturday('11:37'),
      pours: ['P3'],
    });
    // 11:45 less 10 to mix and 7 to fill.
    expect(lastIn({}, plan)[0]?.at).toBe(minuteOf(saturday('11:28')));
  });

  test('is not named when nothing is mixed, or nothing would fit', () => {
    expect(lastIn({}, { ...handPlan(), batches: [] })).toEqual([]);
    expect(lastIn({ mixes: [{ ...mix, attendMinutes: 230 }] })).toEqual([]);
  });
});
