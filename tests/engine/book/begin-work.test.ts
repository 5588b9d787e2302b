import { describe, expect, test } from 'vitest';
import { type Begun, type PlanFile, type PlanPour, spellsOf } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { begin } from '../../../src/engine/book/begin-work.ts';
import { record, type UnderBook } from '../../../src/engine/book/carry-on.ts';
import { sticksLeft } from '../../../src/engine/book/sticks-left.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { keepOfPlan } from '../../../src/engine/standing/keep-of-plan.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { yardSeeds } from '../../support/property-seed.ts';
import { diceOf } from '../../support/random-yard/dice.ts';
import { randomYard } from '../../support/random-yard.ts';
import { beforeFirstSession, type TaskDone, tasksOf } from '../../support/work-by-plan.ts';
import { cutForOf, workOf } from '../../support/work-down.ts';

const at = (yard: YardFile, minute: number): YardFile => ({
  ...yard,
  yard: { ...yard.yard, now: calendarOf(yard.yard.timeZone).instantText(minute) },
});

/** Everything that ends by a minute is done as planned and recorded as it ends; null where the plan is not carried on. */
const workedUntil = (start: UnderBook, until: number): UnderBook | null => {
  let under = start;
  for (let last = minuteOf(start.yard.yard.now); ; ) {
    if (!under.plan) return null;
    const task = tasksOf(under.plan).find(({ end }) => end <= until);
    if (!task) return { ...under, yard: at(under.yard, until) };
    last = Math.max(last, task.end);
    const yard = at(under.yard, last);
    const recorded = record({ ...under, yard }, workOf(task, under.plan, yard));
    if (!recorded.ok) throw new Error(recorded.faults[0]?.message);
    under = recorded.after;
  }
};

/** How a plan has a task that is under way. */
const asBegun = ({ what, start }: TaskDone, plan: PlanFile): Partial<Begun> => {
  switch (what.kind) {
    case 'poured':
      return {
        batches: plan.batches.filter(({ id }) => id === what.batch),
        pours: plan.pours.filter(({ batch }) => batch === what.batch),
      };
    case 'stripped': {
      const { mould, stripStart, stripEnd } = plan.strips.find((strip) => strip.mould === what.mould)!;
      return { strips: [{ mould, stripStart, stripEnd }] };
    }
    case 'packed': {
      const order = plan.orders.find(({ id }) => id === what.order)!;
      const spell = spellsOf(order).find(({ packStart }) => minuteOf(packStart) === start)!;
      return { packs: [{ order: order.id, ...spell, fromFinished: order.fromFinished }] };
    }
    case 'coated':
      return { coats: plan.coats.filter(({ mould }) => mould === what.mould).slice(0, 1) };
    case 'set up': {
      const pours = plan.pours.filter(({ mould, casting }) => mould === what.mould && casting === what.casting);
      const first = pours.reduce((a, b) => (minuteOf(a.prepStart) <= minuteOf(b.prepStart) ? a : b));
      const { mould, casting, prepStart, prepEnd } = first;
      return { preps: [{ mould, casting, prepStart, prepEnd }] };
    }
  }
};

/** A yard in the middle of some task of its first day, with what is under way; null where there is none such. */
const midway = (seed: number) => {
  const first = beforeFirstSession(randomYard(seed));
  if (!first) return null;
  const yard = first;
  const plan = planYard(yard, { effort: 'quick' });
  const calendar = calendarOf(yard.yard.timeZone);
  const today = tasksOf(plan).filter(
    ({ end }) => end < calendar.midnightOf(calendar.dayOf(minuteOf(yard.yard.now)) + 1),
  );
  const long = today.filter(({ start, end }) => end - start > 1);
  if (long.length === 0) return null;
  const dice = diceOf(seed);
  const task = dice.pick(long);
  const until = dice.whole(task.start, task.end - 1);
  const worked = workedUntil({ yard, plan }, until);
  if (!worked?.plan) return null;
  const tasks = tasksOf(worked.plan).filter(({ start, end }) => start <= until && until < end);
  const { plan: going } = worked;
  let { sticks } = going;
  const begun = tasks.reduce<YardFile | null>((before, one) => {
    const text = calendar.instantText(one.end);
    const work = workOf(one, { ...going, sticks }, before!);
    const cutFor = cutForOf(one);
    if (cutFor !== null) sticks = sticksLeft({ ...going, sticks }, cutFor, yard.materials, calendar.instantText);
    return before && begin(before, { work, end: text, as: asBegun(one, going) });
  }, worked.yard);
  return begun && { yard: begun, plan: worked.plan, tasks };
};

/** A pour whose mould is set up by now has nothing to do before its batch. */
const asSetUp = (pour: PlanPour, { yard, plan }: { yard: YardFile; plan: PlanFile }): PlanPour => {
  const isBegun = yard.begun!.preps.some(
    ({ mould, prepStart }) => mould === pour.mould && prepStart === pour.prepStart,
  );
  if (isBegun || minuteOf(pour.prepStart) >= minuteOf(yard.yard.now)) return pour;
  const { start } = plan.batches.find(({ id }) => id === pour.batch)!;
  return { ...pour, prepStart: start, prepEnd: start };
};

const faultsOf = (yard: YardFile, plan: PlanFile): string[] => [
  ...audit(yard, plan).faults,
  ...refereePlan(yard, plan).map((x) => `referee: ${x.rule} ${x.message}`),
];

/** What of the work under way a plan does not have as it was. */
const lost = ({ begun }: YardFile, plan: PlanFile): string[] => {
  const there = new Set([
    ...plan.batches.map(({ id, start, end }) => `${id} ${start} ${end}`),
    ...plan.pours.map(({ id, mould, prepStart, fillEnd }) => `${id} ${mould} ${prepStart} ${fillEnd}`),
    ...plan.strips.map(({ mould, stripStart, stripEnd }) => `${mould} ${stripStart} ${stripEnd}`),
    ...plan.orders.flatMap((order) =>
      spellsOf(order).map(({ packStart, packEnd }) => `${order.id} ${packStart} ${packEnd}`),
    ),
    ...plan.coats.map(({ mould, start, end }) => `coat ${mould} ${start} ${end}`),
  ]);
  const { batches, pours, strips, packs, coats } = begun!;
  return [
    ...batches.map(({ id, start, end }) => `${id} ${start} ${end}`),
    ...pours.map(({ id, mould, prepStart, fillEnd }) => `${id} ${mould} ${prepStart} ${fillEnd}`),
    ...strips.map(({ mould, stripStart, stripEnd }) => `${mould} ${stripStart} ${stripEnd}`),
    ...packs.map(({ order, packStart, packEnd }) => `${order} ${packStart} ${packEnd}`),
    ...coats.map(({ mould, start, end }) => `coat ${mould} ${start} ${end}`),
  ].filter((one) => !there.has(one));
};

describe('work under way', { timeout: 120_000 }, () => {
  test('stays as it was in a plan made anew, which obeys every rule', () => {
    const kinds = new Map<string, number>();
    const faulty: Record<string, string[]> = {};
    for (const seed of yardSeeds(200, 11_000)) {
      const found = midway(seed);
      if (!found) continue;
      for (const { what } of found.tasks) kinds.set(what.kind, (kinds.get(what.kind) ?? 0) + 1);
      const plan = planYard(found.yard, { effort: 'quick' });
      const faults = [...lost(found.yard, plan), ...faultsOf(found.yard, plan)];
      if (faults.length > 0) faulty[`seed ${seed}`] = faults.slice(0, 4);
    }
    expect(faulty).toEqual({});
    for (const kind of ['coated', 'set up', 'poured', 'stripped', 'packed'])
      expect(kinds.get(kind), kind).toBeGreaterThan(3);
  });

  test('and all that is kept of the plan round it stays too', () => {
    const faulty: Record<string, unknown> = {};
    for (const seed of yardSeeds(80, 12_000)) {
      const found = midway(seed);
      if (!found) continue;
      const { begun } = found.yard;
      const now = minuteOf(found.yard.yard.now);
      const all = keepOfPlan(found.plan);
      const under = new Set(begun!.batches.map(({ id }) => id));
      const keep = {
        batches: all.batches.filter(({ id }) => !under.has(id)),
        pours: all.pours.filter(({ batch }) => !under.has(batch)).map((pour) => asSetUp(pour, found)),
        strips: all.strips!.filter(({ stripStart }) => minuteOf(stripStart) > now),
        packs: all.packs!.filter(({ packStart }) => minuteOf(packStart) > now),
        coats: all.coats!.filter(({ start }) => minuteOf(start) > now),
      };
      const plan = planYard({ ...found.yard, keep }, { effort: 'quick' });
      const dropped = plan.dropped.filter(({ pack }) => pack === undefined);
      const faults = [...lost(found.yard, plan), ...dropped, ...faultsOf({ ...found.yard, keep }, plan)];
      if (faults.length > 0) faulty[`seed ${seed}`] = faults.slice(0, 4);
    }
    expect(faulty).toEqual({});
  });
});
