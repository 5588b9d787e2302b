import { expect, test } from 'vitest';
import type { PlanFile } from '../../shared/plan.ts';
import { piecesOfPlan, planReader } from '../../shared/plan-pieces.ts';
import { planYard } from '../../src/engine/plan.ts';
import { scaledYard } from '../support/scaled-yard.ts';
import { smallYard } from '../support/small-yard.ts';

const read = (pieces: Iterable<string>): PlanFile | null => {
  const reader = planReader();
  for (const piece of pieces) reader.add(piece);
  return reader.plan();
};

test('the plan of a small yard is one piece: the plan itself', () => {
  const plan = planYard(smallYard(), { effort: 'quick' });
  const pieces = [...piecesOfPlan(plan)];
  expect(pieces.map((piece) => JSON.parse(piece))).toEqual([plan]);
});

test('a large plan comes in short pieces, and together they are the plan, in its order', () => {
  const plan = planYard(scaledYard(60, 12), { effort: 'quick' });
  expect(plan.pours.length).toBeGreaterThan(500);
  const pieces = [...piecesOfPlan(plan)];
  expect(pieces).toHaveLength(Math.ceil(plan.pours.length / 250));
  for (const piece of pieces) expect(piece.length).toBeLessThan(300_000);
  const again = read(pieces);
  expect(again).toEqual(JSON.parse(JSON.stringify(plan)));
  expect(again).not.toBe(plan);
});

test('a plan that was read gives the very pieces it was read from', () => {
  const plan = planYard(scaledYard(60, 12), { effort: 'quick' });
  const pieces = [...piecesOfPlan(plan)];
  expect([...piecesOfPlan(read(pieces)!)]).toEqual(pieces);
  expect([...piecesOfPlan({ ...plan, batches: plan.batches.slice(1) })]).not.toEqual(pieces);
});

test('pieces that were not asked for to the end are made again', () => {
  const plan = planYard(scaledYard(60, 12), { effort: 'quick' });
  const [first] = piecesOfPlan(plan);
  const all = [...piecesOfPlan(plan)];
  expect(all[0]).toBe(first);
  expect(read(all)).toEqual(JSON.parse(JSON.stringify(plan)));
});

test('nothing read is no plan', () => {
  expect(planReader().plan()).toBe(null);
});
