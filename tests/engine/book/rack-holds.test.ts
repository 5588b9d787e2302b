import { expect, test } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { rackHolds } from '../../../src/engine/book/rack-holds.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';

const yardWith = (rackSpaces: number | undefined, changes: Partial<YardFile> = {}): YardFile => {
  const yard = plannedYard();
  return {
    ...yard,
    yard: { ...yard.yard, ...(rackSpaces === undefined ? {} : { rackSpaces }) },
    finished: [],
    castings: yard.castings.map((one) => ({ ...one, rackSpaces: 2 })),
    ...changes,
  };
};

/** Stripped by 10:45 and 10:52, curing on until these times. */
const curing = (first: string, second: string): PlanFile => {
  const plan = handPlan();
  plan.pours[0]!.pieceReadyAt = saturday(first);
  plan.pours[1]!.pieceReadyAt = saturday(second);
  return plan;
};

/* By hand: each piece takes two spaces from the end of its strip until it is ready. */
test.each([
  [4, '11:30', '11:30', true],
  [3, '11:30', '11:30', false],
  // The first one makes room in the very minute in which the second one comes.
  [3, '10:52', '11:30', true],
  [3, '10:53', '11:30', false],
  [undefined, '11:30', '11:30', true],
])('a rack of %s spaces with pieces until %s and %s: %s', (spaces, first, second, holds) => {
  expect(rackHolds(curing(first, second), yardWith(spaces))).toBe(holds);
});

test('pieces that cure in the yard already take theirs, cured ones none', () => {
  const [panel] = plannedYard().finished;
  const lying = (readyAt?: string) => ({ finished: [{ ...panel!, count: 1, ...(readyAt ? { readyAt } : {}) }] });
  const plan = curing('11:30', '10:52');
  expect(rackHolds(plan, yardWith(3, lying()))).toBe(true);
  expect(rackHolds(plan, yardWith(3, lying(saturday('10:45'))))).toBe(true);
  expect(rackHolds(plan, yardWith(3, lying(saturday('10:46'))))).toBe(false);
});

test('a piece in its mould takes spaces once it is stripped', () => {
  const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('08:00') }];
  const strip = {
    mould: '900 no. 1',
    stripStart: saturday('10:37'),
    stripEnd: saturday('10:45'),
    pieceReadyAt: saturday('12:00'),
  };
  const plan = { ...handPlan(), pours: [], batches: [], strips: [strip] };
  expect(rackHolds(plan, yardWith(2, { inMould }))).toBe(true);
  expect(rackHolds(plan, yardWith(1, { inMould }))).toBe(false);
});
