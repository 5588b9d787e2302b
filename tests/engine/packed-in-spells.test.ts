import { describe, expect, test } from 'vitest';
import { type PlanFile, type PlanOrder, spellsOf } from '../../shared/plan.ts';
import { minuteOf } from '../../shared/time.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { record, type UnderBook } from '../../src/engine/book/carry-on.ts';
import { calendarOf } from '../../src/engine/calendar/calendar.ts';
import { planYard } from '../../src/engine/plan.ts';
import { refereePlan } from '../../src/engine/referee.ts';
import { keepOfPlan } from '../../src/engine/standing/keep-of-plan.ts';
import { withLateWorkDone } from '../../src/usecases/plan/late-work-done.ts';
import { audit } from '../contract/audit-plan.mjs';
import { yardSeeds } from '../support/property-seed.ts';
import { diceOf } from '../support/random-yard/dice.ts';
import { withLongPacking } from '../support/random-yard/long-packing.ts';
import { randomYard } from '../support/random-yard.ts';
import { tasksOf } from '../support/work-by-plan.ts';
import { workOf } from '../support/work-down.ts';

const quickPlan = (yard: YardFile): PlanFile => planYard(yard, { effort: 'quick' });
const faultsOf = (yard: YardFile, plan: PlanFile): string[] => [
  ...audit(yard, plan).faults,
  ...refereePlan(yard, plan).map((x) => `referee: ${x.rule} ${x.message}`),
];
const at = (yard: YardFile, minute: number): YardFile => ({
  ...yard,
  yard: { ...yard.yard, now: calendarOf(yard.yard.timeZone).instantText(minute) },
});
const long = (seed: number): YardFile =>
  withLongPacking(diceOf(seed), randomYard(seed, seed % 3 === 0 ? undefined : 'small'));
const inSpells = ({ orders }: PlanFile): PlanOrder[] => orders.filter(({ packs }) => packs !== undefined);
const minutesOf = (order: PlanOrder | undefined): number =>
  order ? spellsOf(order).reduce((sum, x) => sum + minuteOf(x.packEnd) - minuteOf(x.packStart), 0) : 0;

/** Plans of random yards in which some order is packed over several sessions. */
const plansInSpells = (count: number, from: number) =>
  yardSeeds(count, from).flatMap((seed) => {
    const yard = long(seed);
    const plan = quickPlan(yard);
    return inSpells(plan).length > 0 ? [{ seed, yard, plan }] : [];
  });

describe('orders that no session is long enough for', { timeout: 120_000 }, () => {
  test('are packed over several, and the plan obeys every rule', () => {
    const faulty: Record<string, string[]> = {};
    let packed = 0;
    for (const seed of yardSeeds(160, 30_000)) {
      const yard = long(seed);
      const plan = quickPlan(yard);
      const faults = faultsOf(yard, plan);
      if (faults.length > 0) faulty[`seed ${seed}`] = faults.slice(0, 4);
      packed += inSpells(plan).length;
      const tooLong = plan.unplanned.filter(({ reason }) => reason.startsWith('packing it takes'));
      expect(tooLong, `seed ${seed}`).toEqual([]);
    }
    expect(faulty).toEqual({});
    expect(packed).toBeGreaterThan(30);
  });

  test('are packed at the very same times where all of the plan is kept', () => {
    let [moved, kept] = [0, 0];
    for (const { seed, yard, plan } of plansInSpells(160, 31_000)) {
      const again = { ...yard, keep: keepOfPlan(plan) };
      const same = quickPlan(again);
      expect(faultsOf(again, same), `seed ${seed}`).toEqual([]);
      for (const { id, packs } of inSpells(plan)) {
        // Where pieces can be dealt better an order may be packed at another time.
        if (same.dropped.some(({ pack }) => pack === id)) moved += 1;
        else {
          kept += 1;
          expect(same.orders.find((order) => order.id === id)?.packs, `seed ${seed}`).toEqual(packs);
        }
      }
    }
    expect(kept).toBeGreaterThan(30);
    expect(moved).toBeLessThan(3);
  });
});

/** All tasks up to a minute done and recorded as they end; null where the plan could not be carried on. */
const workedUntil = (start: UnderBook, until: number): (UnderBook & { plan: PlanFile }) | null => {
  let under = start;
  for (let last = minuteOf(start.yard.yard.now); ; ) {
    const { plan } = under;
    if (!plan) return null;
    const task = tasksOf(plan).find(({ end }) => end <= until);
    if (!task) return { plan, yard: at(under.yard, until) };
    last = Math.max(last, task.end);
    const yard = at(under.yard, last);
    const recorded = record({ plan, yard }, workOf(task, plan, yard));
    if (!recorded.ok) throw new Error(recorded.faults[0]?.message);
    under = recorded.after;
  }
};

/** A plan that is carried on over days has buys of days before, and days counted from an earlier one. */
const isOfWork = (fault: string): boolean => !/^(referee: )?R(0|10) /.test(fault);

describe('an order of which some is packed', { timeout: 120_000 }, () => {
  test('keeps what was packed: the plan is carried on with the spells that are left', () => {
    let carried = 0;
    const faulty: Record<string, string[]> = {};
    for (const { seed, yard, plan } of plansInSpells(160, 32_000)) {
      const { id, packs } = inSpells(plan)[0]!;
      const after = workedUntil({ yard, plan }, minuteOf(packs![0]!.packEnd));
      // Something else under way just then is no work of this test.
      if (!after || tasksOf(after.plan).some(({ start }) => start < minuteOf(after.yard.yard.now))) continue;
      carried += 1;
      const order = after.yard.orders.find((one) => one.id === id)!;
      const left = after.plan.orders.find((one) => one.id === id);
      expect(minutesOf(plan.orders.find((one) => one.id === id)), `seed ${seed}`).toBe(
        order.packedMinutes! + minutesOf(left),
      );
      const anew = quickPlan(after.yard);
      const faults = [...faultsOf(after.yard, after.plan).filter(isOfWork), ...faultsOf(after.yard, anew)];
      if (faults.length > 0) faulty[`seed ${seed}`] = faults.slice(0, 4);
    }
    expect(faulty).toEqual({});
    expect(carried).toBeGreaterThan(5);
  });

  test.each([
    ['under way', 0.5],
    ['over and not recorded', 1],
  ])('has its first spell in every plan while that is %s', (_, share) => {
    let seen = 0;
    const faulty: Record<string, string[]> = {};
    for (const { seed, yard, plan } of plansInSpells(120, 33_000)) {
      const { id, packs } = inSpells(plan)[0]!;
      const [first] = packs!;
      const [start, end] = [minuteOf(first!.packStart), minuteOf(first!.packEnd)];
      const now = at(yard, Math.floor(start + share * (end - start)));
      const worked = withLateWorkDone(now, plan);
      if (!worked) continue;
      const made = quickPlan(worked.yard);
      const faults = faultsOf(worked.yard, made);
      if (faults.length > 0) faulty[`seed ${seed}`] = faults.slice(0, 4);
      const back = worked.putBack(made).plan.orders.find((one) => one.id === id);
      if (!back) continue;
      seen += 1;
      expect(spellsOf(back)[0], `seed ${seed}`).toEqual(first);
      expect(minutesOf(back), `seed ${seed}`).toBe(minutesOf(plan.orders.find((one) => one.id === id)));
    }
    expect(faulty).toEqual({});
    expect(seen).toBeGreaterThan(20);
  });
});
