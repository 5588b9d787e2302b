import { describe, expect, test } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import { dateOfDay, minuteOf } from '../../../shared/time.ts';
import type { YardFile, YardFileInput } from '../../../shared/yard-file.ts';
import { soonestDays } from '../../../src/engine/bound/slots.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import type { Problem } from '../../../src/engine/decoder/problem.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const daysOf = (changes: Partial<YardFileInput>, count = 6) =>
  [...soonestDays(compile(smallYard(changes)), 0, count)].map((day) => dateOfDay(day).slice(5));
const slow = { mixes: [{ ...base.mixes[0]!, demouldMinutes: 1000 }] };

describe('by when the pieces of one casting can be there at the very soonest', () => {
  // Two moulds, Saturdays, not stripped the day they are filled: two pieces each Saturday from the 17th on.
  test('one turn a session', () => {
    expect(daysOf(slow)).toEqual(['04-17', '04-17', '04-24', '04-24', '05-01', '05-01']);
  });

  // 08:00 set up 12 -> mix 10 -> fill 7 -> 08:29, hard at 09:44, strip -> 09:52; clean and set up 18 -> 10:10 -> 10:27, hard
  // at 11:42, strip -> 11:50. Two turns a Saturday; the third set-up begins at 11:50 and is done a week later.
  test('two turns where the mix is quick', () => {
    expect(daysOf({})).toEqual(['04-10', '04-10', '04-10', '04-10', '04-17', '04-17']);
    expect(daysOf({ work: [{ ...base.work[0]!, end: '11:49' }] })).toEqual([
      ...['04-10', '04-10', '04-17', '04-17', '04-17', '04-17'],
    ]);
  });

  test('what is there already comes first', () => {
    const there: Partial<YardFileInput> = {
      ...slow,
      finished: [{ casting: 'panel-900', count: 2 }],
      inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-03T11:00:00+01:00' }],
    };
    expect(daysOf(there)).toEqual(['04-10', '04-10', '04-10', '04-17', '04-17', '04-24']);
  });

  // Once three pieces still cured that were ready after all that could be poured, and stood for them.
  test('what is there and ready later does not stand in the way', () => {
    const later = [{ casting: 'panel-900', count: 2, readyAt: '2027-05-05T08:00:00+01:00' }];
    expect(daysOf({ ...slow, finished: later }, 4)).toEqual(['04-17', '04-17', '04-24', '04-24']);
  });

  test('a mould comes in when it is mended, never when it is scrapped', () => {
    const first = (more: Partial<YardFileInput['moulds'][number]>) => ({
      ...slow,
      moulds: [{ ...base.moulds[0]!, ...more }, base.moulds[1]!],
    });
    expect(daysOf(first({ condition: 'damaged', repairedOn: '2027-04-12' }), 4)).toEqual([
      ...['04-17', '04-24', '04-24', '05-01'],
    ]);
    expect(daysOf(first({ condition: 'retired' }), 3)).toEqual(['04-17', '04-24', '05-01']);
  });

  test('as many as the horizon allows', () => {
    expect(daysOf({ ...slow, yard: { ...base.yard, horizonDays: 10 } })).toEqual(['04-17', '04-17']);
    expect(daysOf({ work: [] })).toEqual([]);
  });
});

/** Hand-over days of all pieces of a casting that a plan has, in rising order. */
const daysInPlan = (yard: YardFile, problem: Problem, plan: PlanFile, casting: number): number[] => {
  const { id } = yard.castings[casting]!;
  const inMould = new Map(yard.inMould.map((x) => [x.mould, x.casting]));
  const ready = [
    ...problem.finished.flatMap((lot) => (lot.casting === casting ? Array(lot.count).fill(lot.readyAt) : [])),
    ...plan.strips.flatMap((x) => (inMould.get(x.mould) === id ? [minuteOf(x.pieceReadyAt)] : [])),
    ...plan.pours.flatMap((x) => (x.casting === id ? [minuteOf(x.pieceReadyAt)] : [])),
  ].filter((minute) => minute < problem.horizonEnd);
  const calendar = calendarOf(yard.yard.timeZone);
  return ready.map((minute) => problem.handover[calendar.dayOf(minute) - problem.today]!).sort((a, b) => a - b);
};

test('no plan has a piece sooner', () => {
  for (const seed of yardSeeds(40)) {
    const yard = randomYard(seed, seed % 4 === 0 ? 'tight-rack' : 'small');
    const problem = compile(yard);
    const plan = planYard(yard, { effort: 'quick' });
    yard.castings.forEach((casting, c) => {
      const planned = daysInPlan(yard, problem, plan, c);
      const soonest = soonestDays(problem, c, planned.length);
      expect(soonest.length, `seed ${seed}, ${casting.id}`).toBe(planned.length);
      expect(
        planned.filter((day, k) => soonest[k]! > day),
        `seed ${seed}, ${casting.id}`,
      ).toEqual([]);
    });
  }
});
