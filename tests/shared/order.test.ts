import { expect, test } from 'vitest';
import { order, orderLine, SLIP_WEIGHTS, SLIPS, slipOfWeight } from '../../shared/order.ts';

test('an order weighs one and has no date unless it says so', () => {
  expect(order.parse({ id: 'a', lines: [] })).toEqual({ id: 'a', weight: 1, lines: [] });
});

test.each([[{ kit: 'pair', quantity: 2 }], [{ casting: 'panel', quantity: 0 }], [{ material: 'sand', quantity: 0.5 }]])(
  '%j is a line',
  (line) => expect(orderLine.safeParse(line).success).toBe(true),
);

const oneOfThree = 'has to name exactly one of kit, casting, material';
test.each([
  [{ quantity: 1 }, ['', oneOfThree]],
  [{ kit: 'pair', casting: 'panel', quantity: 1 }, ['', oneOfThree]],
  [{ kit: 'pair', quantity: 1.5 }, ['quantity', 'has to be a whole number']],
  [{ casting: 'panel', quantity: -1 }, ['quantity', 'is negative']],
  [{ material: 'sand', quantity: -0.5 }, ['quantity', 'is negative']],
])('%j is none', (line, fault) => {
  const { error } = orderLine.safeParse(line);
  expect(error?.issues.map((x) => [x.path.join('.'), x.message])).toContainEqual(fault);
});

test('what may slip is found again from its weight', () => {
  for (const slip of SLIPS) expect(slipOfWeight(SLIP_WEIGHTS[slip])).toBe(slip);
  expect([slipOfWeight(0), slipOfWeight(2.9), slipOfWeight(5), slipOfWeight(100)]).toEqual([
    ...(['yes', 'yes', 'rather not', 'not'] as const),
  ]);
});
