import { expect, test } from 'vitest';
import { planWithMemory } from '../src/engine/plan.ts';
import { asMessage, fromMessage } from '../src/plan-messages.ts';
import { scaledYard } from './support/scaled-yard.ts';
import { yieldsDuring } from './support/yields-during.ts';

const sent = (said: unknown): Promise<unknown> => fromMessage(structuredClone(asMessage(said)));

test('a plan goes as texts and arrives as the plan', async () => {
  const answer = planWithMemory(scaledYard(60, 12), { effort: 'quick' });
  const message = asMessage(answer) as { plan: string[] };
  expect(message.plan.length).toBeGreaterThan(1);
  expect(message.plan.every((piece) => typeof piece === 'string')).toBe(true);
  expect(await sent(answer)).toEqual(JSON.parse(JSON.stringify(answer)));
});

test('so does the plan that a question starts from, and what has none goes as it is', async () => {
  const { plan: near, memory } = planWithMemory(scaledYard(60, 12), { effort: 'quick' });
  expect(await sent({ yard: { orders: [] }, near, memory })).toEqual(
    JSON.parse(JSON.stringify({ yard: { orders: [] }, near, memory })),
  );
  for (const said of [null, [1, 2], { yard: {} }, { earliestOn: '2027-04-10', limits: [] }])
    expect(await sent(said)).toEqual(said);
});

test('others are let in while a large plan arrives', async () => {
  const message = asMessage(planWithMemory(scaledYard(60, 12), { effort: 'quick' })) as { plan: string[] };
  expect(await yieldsDuring(() => fromMessage(message))).toBeGreaterThanOrEqual(message.plan.length);
});
