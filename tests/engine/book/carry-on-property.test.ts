import { describe, expect, test } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { record, type UnderBook } from '../../../src/engine/book/carry-on.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { yardSeeds } from '../../support/property-seed.ts';
import { datedYard } from '../../support/random-yard/dated-stock.ts';
import { diceOf } from '../../support/random-yard/dice.ts';
import { sheetYard } from '../../support/random-yard/sheet-yard.ts';
import { randomYard } from '../../support/random-yard.ts';
import { beforeFirstSession, stillMinutes, tasksOf } from '../../support/work-by-plan.ts';
import { workOf } from '../../support/work-down.ts';

const faultsOf = (yard: YardFile, plan: PlanFile): string[] => [
  ...audit(yard, plan).faults,
  ...refereePlan(yard, plan).map((x) => `referee: ${x.rule} ${x.message}`),
];

const at = (yard: YardFile, minute: number): YardFile => ({
  ...yard,
  yard: { ...yard.yard, now: calendarOf(yard.yard.timeZone).instantText(minute) },
});

/** Does all that ends by a minute as the plan has it, and records it at once then (late), or each thing when it ends. */
const workDown = (start: UnderBook, until: number, how: { atOnce: boolean; lateMinutes: number }): UnderBook => {
  const now = until + how.lateMinutes;
  let under = how.atOnce ? { ...start, yard: at(start.yard, now) } : start;
  for (let last = minuteOf(start.yard.yard.now); under.plan; ) {
    const task = tasksOf(under.plan).find(({ end }) => end <= until);
    if (!task) break;
    last = Math.max(last, task.end);
    const yard = how.atOnce ? under.yard : at(under.yard, last);
    const recorded = record({ ...under, yard }, workOf(task, under.plan, yard, how.lateMinutes));
    if (!recorded.ok) throw new Error(`${task.what.kind}: ${recorded.faults[0]?.message}`);
    under = recorded.after;
  }
  return { ...under, yard: at(under.yard, now) };
};

interface Tally {
  carried: number;
  anew: number;
  faulty: Record<string, string[]>;
}

const tryYards = (seeds: readonly number[], atOnce: boolean, lateMinutes: number): Tally => {
  const tally: Tally = { carried: 0, anew: 0, faulty: {} };
  for (const seed of seeds) {
    const random = randomYard(seed);
    // In every second yard bags go past their dates, in every third mesh is in sheets.
    const dated = seed % 2 === 0 ? datedYard(random, seed) : random;
    const yard = beforeFirstSession(seed % 3 === 0 ? sheetYard(dated, seed) : dated);
    if (!yard) continue;
    const plan = planYard(yard, { effort: 'quick' });
    const minutes = stillMinutes(yard, tasksOf(plan));
    if (minutes.length === 0) continue;
    const until = diceOf(seed).pick(minutes);
    const after = workDown({ yard, plan }, until, { atOnce, lateMinutes });
    if (!after.plan) {
      tally.anew++;
      continue;
    }
    tally.carried++;
    // A task that was moved may be under way just then: a plan of version 1 has no word for it.
    if (lateMinutes > 0 && tasksOf(after.plan).some(({ start }) => start < until + lateMinutes)) continue;
    const faults = faultsOf(after.yard, after.plan);
    if (faults.length > 0) tally.faulty[`seed ${seed}`] = faults.slice(0, 4);
  }
  return tally;
};

const SEEDS = 300;
const SEEDS_PER_TEST = 50;
const chunks = Array.from({ length: SEEDS / SEEDS_PER_TEST }, (_, i) => yardSeeds(SEEDS_PER_TEST, i * SEEDS_PER_TEST));

describe('a plan that is carried on obeys every rule', { timeout: 120_000 }, () => {
  test.each(chunks.map((seeds) => ({ from: seeds[0]!, seeds })))(
    'when all of a day is recorded at once as it was planned, on random yards from $from on',
    ({ seeds }) => {
      const { faulty, carried, anew } = tryYards(seeds, true, 0);
      expect(faulty).toEqual({});
      expect(carried).toBeGreaterThan(anew);
    },
  );

  test('when each thing is recorded as it ends', () => {
    const { faulty, carried, anew } = tryYards(yardSeeds(80, 3000), false, 0);
    expect(faulty).toEqual({});
    expect(carried).toBeGreaterThan(anew);
  });

  test('when moulds were full minutes later than planned', () => {
    const { faulty, carried } = tryYards(yardSeeds(80, 4000), true, 6);
    expect(faulty).toEqual({});
    expect(carried).toBeGreaterThan(0);
  });
});
