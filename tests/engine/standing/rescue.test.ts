import { expect, test } from 'vitest';
import type { Keep, PlanFile } from '../../../shared/plan.ts';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { decoderStateOf } from '../../../src/engine/decoder/decoder-state.ts';
import { dispatchOf } from '../../../src/engine/decoder/dispatch.ts';
import { planWithMemory, planYard } from '../../../src/engine/plan.ts';
import { dispatchFrom, type PlanMemory } from '../../../src/engine/search/memory.ts';
import { keepOfPlan } from '../../../src/engine/standing/keep-of-plan.ts';
import { rescuesOf } from '../../../src/engine/standing/rescue.ts';
import { candidateOf } from '../../../src/engine/standing/standing-plan.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';

/** The yard with the first mould that is poured in damaged for good; null where none is. */
const withDamage = (yard: YardFile, plan: PlanFile): { yard: YardFile; id: string } | null => {
  const mould = yard.moulds.find(
    ({ id, condition }) => condition === 'ready' && plan.pours.some((p) => p.mould === id),
  );
  if (!mould) return null;
  const moulds = yard.moulds.map((one) =>
    one === mould ? { ...one, condition: 'damaged' as const, prepped: false } : one,
  );
  const inMould = yard.inMould.filter((one) => one.mould !== mould.id);
  return { yard: { ...yard, moulds, inMould }, id: mould.id };
};

/** What still stands of a plan without a mould. */
const standingWithout = (plan: PlanFile, mould: string): Keep => {
  const gone = new Set(plan.pours.filter((pour) => pour.mould === mould).map(({ batch }) => batch));
  const { batches, pours } = keepOfPlan(plan);
  return { batches: batches.filter(({ id }) => !gone.has(id)), pours: pours.filter(({ batch }) => !gone.has(batch)) };
};

/** Days by which dates that were given are later, in all; an order that falls out counts as a year. */
const laterBy = (before: PlanFile, after: PlanFile, given: readonly string[]): number => {
  const late = ({ orders }: PlanFile, id: string) => orders.find((order) => order.id === id)?.daysLate;
  return given.reduce((sum, id) => {
    const was = late(before, id);
    return was === undefined ? sum : sum + Math.max(0, (late(after, id) ?? 365) - was);
  }, 0);
};

/* A delivery was late, and a promise was said to be late that a plan made from nothing kept. */
test('no date is later after a mishap where a search from nothing keeps all of them', () => {
  let harmed = 0;
  for (const seed of yardSeeds(8, 400)) {
    const yard = randomYard(seed, 'small');
    const { plan, memory } = planWithMemory(yard);
    const damaged = withDamage(yard, plan);
    if (!damaged) continue;
    const given = yard.orders.flatMap(({ id, due }) => (due === undefined ? [] : [id]));
    const standing = standingWithout(plan, damaged.id);
    const again = planWithMemory(damaged.yard, { effort: 'quick', near: plan, memory, standing, given }).plan;
    if (laterBy(plan, again, given) === 0) continue;
    harmed++;
    const fromNothing = planYard(damaged.yard, { effort: 'normal' });
    expect(laterBy(plan, fromNothing, given), `seed ${seed}`).toBeGreaterThan(0);
  }
  expect(harmed).toBeGreaterThan(2);
}, 120_000);

/** How many plans are looked for that may spare dates, where those of a memory are kept to. */
const rescuesIn = (yard: YardFile, near: PlanFile, memory: PlanMemory, given: readonly string[]): number => {
  const problem = compile(yard);
  const state = decoderStateOf(problem, dispatchOf(new Int32Array(0)));
  const rescuing = { state, given: new Set(given), near, memory, present: undefined, seed: 1 };
  return rescuesOf(rescuing, candidateOf(state, dispatchFrom(problem, memory))).length;
};

test('one search has to do where nobody is ready later and a date was given that is not kept', () => {
  const counts: number[] = [];
  for (const seed of yardSeeds(3, 400)) {
    const yard = randomYard(seed, 'small');
    const { plan, memory } = planWithMemory(yard);
    const given = yard.orders.flatMap(({ id, due }) => (due === undefined ? [] : [id]));
    const last = plan.orders
      .filter(({ id }) => given.includes(id))
      .sort((a, b) => b.completesOn.localeCompare(a.completesOn))[0];
    if (!last) continue;
    const due = dateOfDay(dayNumber(last.completesOn) - 7);
    const told = { ...yard, orders: yard.orders.map((one) => (one.id === last.id ? { ...one, due } : one)) };
    counts.push(
      rescuesIn(told, { ...plan, orders: plan.orders.map((one) => ({ ...one, daysLate: 0 })) }, memory, [last.id]),
    );
  }
  expect(Math.max(...counts)).toBe(1);
}, 120_000);
