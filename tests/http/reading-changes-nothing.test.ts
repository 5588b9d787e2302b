import { describe, expect, test } from 'vitest';
import { recentHeads } from '../../db/stores/change-store.ts';
import { lateTakenSince } from '../../db/stores/late-work-store.ts';
import { storedPlan } from '../../db/stores/plan-store.ts';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import type { PlanFile } from '../../shared/plan.ts';
import { type Minute, minuteOf } from '../../shared/time.ts';
import { calendarOf } from '../../src/engine/calendar/calendar.ts';
import { currentPlan } from '../../src/usecases/plan/make-plan.ts';
import { showToday } from '../../src/usecases/today/show-today.ts';
import { demoAt, demoSaturday } from '../support/demo-saturday.ts';
import { plannedYard, saturday } from '../support/planned-yard.ts';
import { yardSeeds } from '../support/property-seed.ts';
import { randomYard } from '../support/random-yard.ts';
import { screensOn, type TestScreens } from '../support/screens.ts';
import { beforeFirstSession, tasksOf } from '../support/work-by-plan.ts';
import { yardContext } from '../support/yard-context.ts';

const PAGES = ['/', '/today', '/today/sheet', '/orders', '/moulds', '/turns', '/buying', '/changes'];

/** As many minutes of a yard as are read at. */
const MINUTES = 3;

const CHANGES_READ = 50;

/** All that reading may not change: the plan, what is left to be answered, the data and the log. */
const keptIn = ({ database }: Pick<TestScreens, 'database'>, now: string) =>
  database.read(async (tx) => ({
    plan: await storedPlan(tx),
    file: await loadYardFile(tx, now),
    changes: await recentHeads(tx, CHANGES_READ),
    taken: await lateTakenSince(tx, 0),
  }));

/** Minutes in the middle of tasks of the plan's first day with work, spread over it. */
const midTasks = (plan: PlanFile, midnight: Minute): Minute[] => {
  const middles = tasksOf(plan)
    .map(({ start, end }) => Math.floor((start + end) / 2))
    .filter((minute) => minute < midnight);
  const step = Math.max(1, Math.ceil(middles.length / MINUTES));
  return middles.filter((_minute, place) => place % step === 0);
};

const batchesAt = ({ batches }: PlanFile, minute: Minute): string[] =>
  batches.filter(({ start, end }) => minuteOf(start) <= minute && minuteOf(end) > minute).map(({ start }) => start);

describe('pages that are read in the middle of tasks', () => {
  test.each(yardSeeds(6, 4))('leave the plan, the work and the log as they were, yard %i', async (seed) => {
    const yard = beforeFirstSession(randomYard(seed, 'small'));
    if (!yard) return;
    const { database, now } = await yardContext(yard);
    const { plan } = await currentPlan({ database, now });
    const calendar = calendarOf(yard.yard.timeZone);
    const midnight = calendar.midnightOf(calendar.dayOf(minuteOf(now)) + 1);
    const before = await keptIn({ database }, now);
    for (const minute of midTasks(plan, midnight)) {
      const at = calendar.instantText(minute);
      const { get } = screensOn(database, at);
      for (const path of PAGES) expect([path, (await get(path)).status]).toEqual([path, 200]);
      expect(await keptIn({ database }, now)).toEqual(before);
      const { begun } = await showToday({ database, now: at });
      const mixing = begun.flatMap(({ step }) => (step.kind === 'batch' ? [step.at] : []));
      expect(mixing).toEqual(batchesAt(plan, minute));
    }
  });
});

/*
 * Hours from 23:30 on Friday to 4:00: no. 1 is set up from 23:40, mixed for from 23:52 to 0:02, full at 0:09, and stripped
 * 75 minutes later, at 1:24.
 */
describe('over midnight, when a plan is made for the new date', () => {
  const night = async () => {
    const base = plannedYard();
    const hours = [
      { rule: 'FREQ=WEEKLY;BYDAY=FR', from: '2027-01-01', start: '23:30', end: '24:00' },
      { rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '00:00', end: '04:00' },
    ];
    const yard = plannedYard({ yard: { ...base.yard, now: '2027-04-09T20:00:00+01:00' }, work: hours });
    const { database, now } = await yardContext(yard);
    const planAt = async (instant: string) => (await currentPlan({ database, now: instant })).plan;
    return { database, before: await planAt(now), planAt };
  };

  test('what is under way stays as it was', async () => {
    const { database, before, planAt } = await night();
    expect(before.batches.map(({ start }) => start)).toEqual(['2027-04-09T23:52:00+01:00']);
    const after = await planAt(saturday('00:05'));
    expect(after.batches.map(({ start, end }) => [start, end])).toEqual([
      ['2027-04-09T23:52:00+01:00', saturday('00:09')],
    ]);
    expect(after.pours.map(({ stripStart }) => stripStart)).toEqual(before.pours.map(({ stripStart }) => stripStart));
    const { begun } = await showToday({ database, now: saturday('00:05') });
    expect(begun.map(({ step }) => [step.kind, step.at])).toEqual([['batch', '2027-04-09T23:52:00+01:00']]);
  });

  test('what is over and not recorded stays to be recorded, with what follows from it', async () => {
    const { database, before, planAt } = await night();
    const after = await planAt(saturday('00:30'));
    expect(after.batches).toEqual(before.batches);
    expect(after.pours.map(({ fillEnd, stripStart }) => [fillEnd, stripStart])).toEqual([
      [saturday('00:09'), saturday('01:24')],
    ]);
    const { steps, late } = await showToday({ database, now: saturday('00:30') });
    const listed = [...steps, ...late.flatMap(({ lines }) => lines.map(({ step }) => step))];
    expect(listed.map(({ kind }) => kind)).toContain('batch');
  });

  test('what is fixed for the next session stays', async () => {
    const { database } = await demoSaturday();
    const friday = { database, now: '2027-04-09T20:00:00+01:00' };
    const of = ({ batches, pours, strips }: PlanFile) => ({
      batches: batches.filter(({ start }) => start < demoAt('23:59')).map(({ start, mix }) => [start, mix]),
      pours: pours.filter(({ fillEnd }) => fillEnd < demoAt('23:59')).map(({ mould, fillEnd }) => [mould, fillEnd]),
      strips: strips.filter(({ stripStart }) => stripStart < demoAt('23:59')).map(({ mould }) => mould),
    });
    const before = of((await currentPlan(friday)).plan);
    expect(before.batches.length).toBeGreaterThan(2);
    await screensOn(database, demoAt('00:05')).get('/today');
    expect(of((await currentPlan({ database, now: demoAt('00:05') })).plan)).toEqual(before);
  });
});
