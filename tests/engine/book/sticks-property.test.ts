import { describe, expect, test } from 'vitest';
import type { Material } from '../../../shared/material.ts';
import type { PlanFile } from '../../../shared/plan.ts';
import { dayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { record } from '../../../src/engine/book/carry-on.ts';
import { type StickCut, sticksFor } from '../../../src/engine/book/sticks-cut.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { sessionsOf } from '../../../src/engine/calendar/sessions.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';
import { beforeFirstSession, type TaskDone, tasksOf } from '../../support/work-by-plan.ts';
import { cutForOf, workOf } from '../../support/work-down.ts';

/** What speaks against a plan, but for its days to completion: they are counted from the day it was made. */
const faultsOf = (yard: YardFile, plan: PlanFile): string[] =>
  [...audit(yard, plan).faults, ...refereePlan(yard, plan).map((x) => `referee: ${x.rule} ${x.message}`)].filter(
    (fault) => !fault.includes('weightedCompletionDays'),
  );

/** What is bought as the plan has it, and what arrives, by the day of a minute. */
const onTheDayOf = (minute: number, yard: YardFile, plan: PlanFile): { yard: YardFile; plan: PlanFile } => {
  const { instantText, dayOf } = calendarOf(yard.yard.timeZone);
  const day = dayOf(minute);
  const bought = plan.buys.filter(({ orderBy }) => dayNumber(orderBy) <= day);
  const incoming = [
    ...yard.incoming,
    ...bought.map(({ material, quantity, arrivesOn }) => ({ material, quantity, on: arrivesOn })),
  ];
  const here = incoming.filter(({ on }) => dayNumber(on) <= day);
  const came = (id: string) => here.reduce((sum, one) => (one.material === id ? sum + one.quantity : sum), 0);
  return {
    yard: {
      ...yard,
      yard: { ...yard.yard, now: instantText(minute) },
      materials: yard.materials.map((one) => ({ ...one, onHand: one.onHand + came(one.id) })),
      incoming: incoming.filter((one) => !here.includes(one)),
    },
    plan: { ...plan, buys: plan.buys.filter((one) => !bought.includes(one)) },
  };
};

/** All that is there of a material that is cut, mm. */
const lengthThere = ({ onHand, stickMm = 0, offcuts = [] }: Material): number =>
  onHand * stickMm + offcuts.reduce((sum, { lengthMm, count }) => sum + lengthMm * count, 0);

const shortestCut = ({ castings, kits }: YardFile, id: string): number =>
  Math.min(
    ...[...castings, ...kits].flatMap(({ cuts }) =>
      cuts.filter(({ material, count }) => material === id && count > 0).map(({ lengthMm }) => lengthMm),
    ),
  );

/** How much less there is once pieces are cut from some sticks: pieces, kerfs, and rests too short for anything, mm. */
const lengthGone = (yard: YardFile, { id, stickMm = 0, kerfMm }: Material, sticks: readonly StickCut[]): number =>
  sticks
    .filter(({ material }) => material === id)
    .reduce((sum, { offcutMm, cuts }) => {
      const from = offcutMm ?? stickMm;
      const pieces = cuts.reduce((all, { lengthMm, count }) => all + count * (lengthMm + kerfMm), 0);
      const rest = from - pieces;
      return sum + (rest > 0 && rest >= shortestCut(yard, id) - 1e-9 ? pieces : from);
    }, 0);

/** What of a material goes into a task uncut. */
const usedWhole = (yard: YardFile, plan: PlanFile, id: string, { what }: TaskDone): number => {
  const of = (list: readonly { material: string; quantity: number }[]) =>
    list.reduce((sum, one) => (one.material === id ? sum + one.quantity : sum), 0);
  if (what.kind === 'poured') {
    const batch = plan.batches.find((one) => one.id === what.batch)!;
    const pieces = plan.pours.filter((pour) => pour.batch === batch.id);
    const perBag = of(yard.mixes.find(({ id: mix }) => mix === batch.mix)!.perBag);
    return (
      perBag * batch.bags +
      pieces.reduce((sum, { casting }) => sum + of(yard.castings.find((one) => one.id === casting)!.perPiece), 0)
    );
  }
  if (what.kind !== 'packed') return 0;
  const lines = yard.orders.find((one) => one.id === what.order)?.lines ?? [];
  return lines.reduce((sum, { kit, material, quantity }) => {
    const parts = yard.kits.find((one) => one.id === kit)?.parts ?? [];
    return sum + (material === id ? quantity : 0) + of(parts) * quantity;
  }, 0);
};

/** Whether the plan would have gone on in a yard that is the same but cuts nothing: then sticks are why it did not. */
const goesOnUncut = (yard: YardFile, plan: PlanFile, task: TaskDone): boolean => {
  const without = <T extends { cuts: unknown[] }>(list: readonly T[]): T[] => list.map((one) => ({ ...one, cuts: [] }));
  const uncut = { ...yard, castings: without(yard.castings), kits: without(yard.kits) };
  const recorded = record({ yard: uncut, plan: { ...plan, sticks: [] } }, workOf(task, plan, uncut));
  return recorded.ok && recorded.after.plan !== null;
};

/** Whether the day of a minute began in the middle of a session: of that one the rules see no more than the day's part. */
const isWorkedThrough = (yard: YardFile, now: number): boolean => {
  const calendar = calendarOf(yard.yard.timeZone);
  const midnight = calendar.midnightOf(calendar.dayOf(now));
  return sessionsOf(yard, calendar).some(({ start, end }) => start < midnight && end > midnight);
};

interface Tally {
  cuts: number;
  fromOffcuts: number;
  carried: number;
  anew: number;
  checked: number;
  faulty: Record<string, unknown>;
}

const MOST_TASKS = 40;

/** Works a yard down as planned, task by task, and looks at the book and the plan after each. */
const workDown = (start: YardFile, seed: number, tally: Tally): void => {
  let [yard, plan] = [start, planYard(start, { effort: 'quick' })];
  for (let done = 0; done < MOST_TASKS; done++) {
    const [task] = tasksOf(plan);
    if (!task) return;
    const now = Math.max(task.end, minuteOf(yard.yard.now));
    ({ yard, plan } = onTheDayOf(now, yard, plan));
    const cutFor = cutForOf(task);
    const sticks = cutFor === null ? [] : sticksFor(plan.sticks, cutFor);
    const recorded = record({ yard, plan }, workOf(task, plan, yard));
    if (!recorded.ok) throw new Error(`seed ${seed}, ${task.what.kind}: ${recorded.faults[0]?.message}`);
    const { after } = recorded;
    for (const [place, material] of yard.materials.entries()) {
      if (material.stickMm === undefined) continue;
      const left =
        lengthThere(material) -
        lengthGone(yard, material, sticks) -
        usedWhole(yard, plan, material.id, task) * material.stickMm;
      if (Math.abs(left - lengthThere(after.yard.materials[place]!)) > 1e-3)
        tally.faulty[`seed ${seed} ${material.id}`] = { left, book: after.yard.materials[place] };
    }
    if (sticks.length > 0) {
      tally.cuts++;
      if (sticks.some(({ offcutMm }) => offcutMm !== undefined)) tally.fromOffcuts++;
      if (!after.plan && goesOnUncut(yard, plan, task)) tally.faulty[`seed ${seed} anew`] = { task, sticks };
    }
    if (!after.plan) {
      tally.anew++;
      return;
    }
    tally.carried++;
    ({ yard, plan } = { yard: after.yard, plan: after.plan });
    // Each look is dear: the plan is looked at where something was cut.
    if (sticks.length === 0 || tasksOf(plan).some(({ start: from }) => from < now)) continue;
    if (isWorkedThrough(start, now)) continue;
    tally.checked++;
    const faults = faultsOf(yard, plan);
    if (faults.length > 0) {
      tally.faulty[`seed ${seed} task ${done}`] = faults.slice(0, 4);
      return;
    }
  }
};

const SEEDS = 160;
const SEEDS_PER_TEST = 40;
const chunks = Array.from({ length: SEEDS / SEEDS_PER_TEST }, (_, i) =>
  yardSeeds(SEEDS_PER_TEST, 6000 + i * SEEDS_PER_TEST),
);

describe('sticks, offcuts and the plan agree to the millimetre', { timeout: 120_000 }, () => {
  test.each(chunks.map((seeds) => ({ from: seeds[0]!, seeds })))(
    'after each task that is done as planned, on random yards from $from on',
    ({ seeds }) => {
      const tally: Tally = { cuts: 0, fromOffcuts: 0, carried: 0, anew: 0, checked: 0, faulty: {} };
      for (const seed of seeds) {
        const yard = beforeFirstSession(randomYard(seed));
        if (yard) workDown(yard, seed, tally);
      }
      expect(tally.faulty).toEqual({});
      expect(tally.cuts).toBeGreaterThan(seeds.length);
      expect(tally.fromOffcuts).toBeGreaterThan(seeds.length / 4);
      expect(tally.checked).toBeGreaterThan(seeds.length);
    },
  );
});
