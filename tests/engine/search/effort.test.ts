import { expect, test } from 'vitest';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { poursOf, stopRule } from '../../../src/engine/search/effort.ts';
import { smallYard } from '../../support/small-yard.ts';

/** One line asks for 10,000 pieces at the most. */
const asking = (quantity: number, lines = 1) =>
  compile(smallYard({ orders: [{ id: 'a', lines: Array(lines).fill({ casting: 'panel-900', quantity }) }] }));

test('pieces asked for, at least one', () => {
  expect(poursOf(compile(smallYard()))).toBe(2);
  expect(poursOf(asking(250))).toBe(250);
  expect(poursOf(asking(0))).toBe(1);
});

test('a larger yard is given fewer plans, so that they take about as long; any at least twelve', () => {
  const plans = (quantity: number) => stopRule(asking(quantity), 'normal').plans;
  expect(plans(130)).toBeGreaterThan(500);
  expect(plans(1300) / plans(130)).toBeCloseTo(0.1, 2);
  expect(plans(2)).toBe(plans(1));
  expect(stopRule(asking(10_000, 10), 'normal').plans).toBe(12);
});

test('thorough goes on longer', () => {
  for (const count of [2, 130, 5000]) {
    const [normal, thorough] = [stopRule(asking(count), 'normal'), stopRule(asking(count), 'thorough')];
    expect(thorough.plans).toBeGreaterThan(normal.plans);
    expect(thorough.judged).toBe(10 * normal.judged);
  }
});
