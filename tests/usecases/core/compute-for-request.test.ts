import { expect, test } from 'vitest';
import type { YardFile } from '../../../shared/yard-file.ts';
import { planWithMemory } from '../../../src/engine/plan.ts';
import { type Compute, computeWithoutThread } from '../../../src/usecases/core/computations.ts';
import { computeForRequest } from '../../../src/usecases/core/compute-for-request.ts';
import type { Background } from '../../../src/usecases/core/context.ts';
import { smallYard } from '../../support/small-yard.ts';

const asking = (quantity: number): YardFile =>
  smallYard({ orders: [{ id: 'a', weight: 1, lines: [{ kit: 'pair', quantity }] }] });

const threads = (answer: Compute) => {
  const asked: string[] = [];
  const computeThere: Compute = (kind, question) => {
    asked.push(kind);
    return answer(kind, question);
  };
  const idle = { planMade: () => {}, improving: () => false, compute: computeWithoutThread };
  const background: Background = { ...idle, computeForRequest: computeThere };
  return { asked, background };
};

test('what a request waits for is worked out in a thread, and is the same there', async () => {
  const { asked, background } = threads(computeWithoutThread);
  for (const yard of [asking(2), asking(300)])
    expect(await computeForRequest(background, 'quick plan', { yard })).toEqual(
      planWithMemory(yard, { effort: 'quick' }),
    );
  expect(asked).toEqual(['quick plan', 'quick plan']);
});

test('where the thread has given up, or there is none, it is worked out all the same', async () => {
  const { asked, background } = threads(async () => null);
  const expected = planWithMemory(asking(300), { effort: 'quick' });
  expect(await computeForRequest(background, 'quick plan', { yard: asking(300) })).toEqual(expected);
  expect(asked).toEqual(['quick plan']);
  expect(await computeForRequest(undefined, 'quick plan', { yard: asking(300) })).toEqual(expected);
});
