import { expect, test } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import { dateOfDay, dayNumber, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { planWithMemory } from '../../../src/engine/plan.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import type { PlanMemory } from '../../../src/engine/search/memory.ts';
import { type Candidate, standOn } from '../../../src/engine/standing/standing-plan.ts';
import { fixedPlan, withKeep } from '../../../src/usecases/plan/fixed-plan.ts';
import { standingPours } from '../../../src/usecases/plan/standing-pours.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';

/** A random yard with its plan; small ones, so that there are many. */
interface Planned {
  yard: YardFile;
  plan: PlanFile;
  memory: PlanMemory;
}

const planned = (seed: number): Planned | null => {
  const yard = randomYard(seed, seed % 2 === 0 ? 'small' : undefined);
  if (yard.orders.length > 40) return null;
  const made = planWithMemory(yard, { effort: 'quick' });
  return made.plan.pours.length > 0 && made.plan.pours.length <= 250 ? { yard, ...made } : null;
};

/** What becomes of a plan in a yard that has changed, what is to begin within so many hours fixed. */
const after = ({ plan, memory }: Planned, yard: YardFile, hours: number) => {
  const fixing = { yard, plan, hours, clock: minuteOf(yard.yard.now) };
  const { keep } = fixedPlan(fixing);
  const asked = withKeep(yard, keep);
  const standing = standingPours(fixing, keep)!;
  const { stood } = standOn(asked, standing, memory, plan);
  const again = () => planWithMemory(asked, { effort: 'quick', near: plan, memory, standing, given: [] }).plan;
  return { asked, standing, stood, again };
};

const faultsOf = ({ asked, again }: ReturnType<typeof after>): string[] => {
  const plan = again();
  return [...audit(asked, plan).faults, ...refereePlan(asked, plan).map(({ message }) => message)];
};

/** Orders that are ready later than they were planned. */
const laterIn = ({ problem, readyOn }: Candidate, { orders }: PlanFile): string[] => {
  const was = new Map(orders.map(({ id, completesOn }) => [id, dayNumber(completesOn)]));
  return problem.yard.orders.flatMap(({ id }, o) => {
    const day = was.get(id);
    return day !== undefined && (readyOn[o]! < 0 || readyOn[o]! > day) ? [id] : [];
  });
};

/** The yard with an order out of the book, what was set aside for it free. */
const without = (yard: YardFile, id: string): YardFile => {
  const free = <T extends { order?: string | undefined }>({ order, ...piece }: T) =>
    order === undefined || order === id ? piece : { ...piece, order };
  return {
    ...yard,
    orders: yard.orders.filter((order) => order.id !== id),
    finished: yard.finished.map(free),
    inMould: yard.inMould.map(free),
  } as YardFile;
};

/*
 * Seen: an order that goes takes the sealing coats with it that its moulds were given before its pieces, and whatever was poured
 * there later fell out, since its mould was due for one; or its mould was set for another piece now, or clean, so that
 * setting it up took other minutes than planned. In 39 of 205 cases something fell out, in 15 somebody else was later.
 */
test('an order that goes takes nothing with it that others need, and nobody is later', () => {
  let [cases, taken] = [0, 0];
  for (const seed of [...yardSeeds(14, 31_000), 21_007, 21_025, 21_041, 31_061]) {
    const before = planned(seed);
    if (!before) continue;
    for (const { id } of before.yard.orders.slice(0, 4)) {
      const left = after(before, without(before.yard, id), seed % 3 === 0 ? 36 : 0);
      const said = `seed ${seed}, without ${id}`;
      // A set-up or a coat that is fixed may have been for what is gone.
      const lost = left.stood.dropped.filter(({ prep, coat }) => prep === undefined && coat === undefined);
      expect(lost, said).toEqual([]);
      expect(laterIn(left.stood, before.plan), said).toEqual([]);
      if (cases++ % 5 === 0) expect(faultsOf(left), said).toEqual([]);
      taken += before.plan.pours.length - left.standing.pours.length;
    }
  }
  expect(cases).toBeGreaterThan(30);
  expect(taken).toBeGreaterThan(100);
}, 60_000);

/* Seen: an order was cancelled, and a promised one fell out of the plan for a heavier one that no session had had time for. */
test('an order that goes makes no other fall out, where there is too much to do', () => {
  const random = randomYard(312, 'tight-rack');
  const twice = random.orders.flatMap((order, i) => [
    order,
    { ...order, id: `${order.id}b`, weight: [1, 3, 6][i % 3]! },
  ]);
  const yard = { ...random, yard: { ...random.yard, horizonDays: 20 }, orders: twice };
  const made = planWithMemory(yard, { effort: 'quick' });
  expect(made.plan.unplanned.length).toBeGreaterThan(0);
  const { asked, standing } = after({ yard, ...made }, without(yard, '27-002b'), 0);
  const given = yard.orders.flatMap(({ id, due }) => (due === undefined ? [] : [id]));
  const near = made.plan;
  const is = planWithMemory(asked, { effort: 'quick', near, memory: made.memory, standing, given }).plan;
  const planned = new Set([...is.orders.map(({ id }) => id), '27-002b']);
  expect(near.orders.map(({ id }) => id).filter((id) => !planned.has(id))).toEqual([]);
});

/** What may be said of a mould: damaged for five days, as many turns as a coat lasts, dirty, set for its other piece. */
const CHANGES = ['damaged', 'turns', 'dirty', 'other'] as const;
const changed = (yard: YardFile, id: string, change: (typeof CHANGES)[number]): YardFile => ({
  ...yard,
  moulds: yard.moulds.map((mould) => {
    if (mould.id !== id || mould.condition === 'retired') return mould;
    const one = { ...mould, prepped: false };
    if (change === 'damaged') {
      const repairedOn = dateOfDay(dayNumber(yard.yard.now.slice(0, 10)) + 5);
      return { ...one, condition: 'damaged' as const, repairedOn };
    }
    if (change === 'turns') return { ...one, turnsSinceOil: one.oilEveryTurns ?? one.turnsSinceOil };
    if (change === 'dirty') return { ...one, condition: 'dirty' as const };
    return { ...one, setFor: one.makes.at(-1)!.casting };
  }),
});

/*
 * Seen: a mould that was said to be dirty lost its next pour, and with that the coats and set-ups of all later ones: of 3,500 batches
 * that stood 800 fell out, of which 180 have to. What was fixed of it was neither in the plan nor said to be dropped.
 */
test('what is said of one mould costs few of the batches that stand, and what is fixed is there or told of', () => {
  let [stands, lost] = [0, 0];
  for (const seed of [...yardSeeds(4, 41_000), 41_063, 41_076, 41_087, 41_097]) {
    const before = planned(seed);
    if (!before) continue;
    const { mould } = before.plan.pours[0]!;
    for (const change of CHANGES) {
      const left = after(before, changed(before.yard, mould, change), 36);
      stands += left.standing.batches.length;
      lost += left.stood.dropped.filter(({ batch }) => batch !== undefined).length;
      expect(faultsOf(left), `seed ${seed}, ${change}`).toEqual([]);
    }
  }
  expect(stands).toBeGreaterThan(200);
  expect(lost).toBeLessThan(stands * 0.1);
}, 60_000);
