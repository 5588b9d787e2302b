import { setTimeout as pause } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import { describe, expect, onTestFinished, test } from 'vitest';
import { type PlanThread, planThread } from '../src/plan-thread.ts';
import { computeHere } from '../src/usecases/core/computations.ts';
import { scaledYard } from './support/scaled-yard.ts';
import { worsePlanYard } from './support/worse-plan.ts';

const thread = (limitMs: number): PlanThread & { told: string[] } => {
  const told: string[] = [];
  const started = planThread({ limitMs, tell: (words) => void told.push(words) });
  onTestFinished(() => started.close());
  return { ...started, told };
};

const AMPLE_MS = 30_000;
/** A search through hundreds of orders takes longer than this on any machine. */
const SHORT_MS = 1_500;
const late = { ...worsePlanYard, moulds: worsePlanYard.moulds.slice(0, 1) };
const endless = () => ({ yard: scaledYard(400, 80) });

describe('a thread', () => {
  test('answers as the same calculation does here, one question after another', async () => {
    const { compute, told } = thread(AMPLE_MS);
    const both = await Promise.all([compute('next moulds', { yard: late }), compute('better plan', { yard: late })]);
    expect(both).toEqual([computeHere('next moulds', { yard: late }), computeHere('better plan', { yard: late })]);
    expect(told).toEqual([]);
  });

  test('gives up what takes too long, says so, and answers the next question', async () => {
    const { compute, told } = thread(SHORT_MS);
    expect(await compute('better plan', endless())).toBeNull();
    expect(told).toEqual(['Working out "better plan" was given up after 1.5 seconds. Nothing was changed by it.']);
  });

  test('gives up what nobody wants any more, and answers the next question', async () => {
    const { compute, giveUp, told } = thread(AMPLE_MS);
    const unwanted = compute('better plan', endless());
    await pause(300);
    giveUp();
    expect(await unwanted).toBeNull();
    expect(await compute('next moulds', { yard: late })).toEqual(computeHere('next moulds', { yard: late }));
    expect(told).toEqual([]);
  });

  test('that fails says why, and answers the next question', async () => {
    const { compute, told } = thread(AMPLE_MS);
    const broken = { yard: { ...late, castings: [] } };
    expect(await compute('better plan', broken)).toBeNull();
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/^A calculation failed: /);
    expect(await compute('next moulds', { yard: late })).toEqual(computeHere('next moulds', { yard: late }));
  });

  test('that ends without a word is told of, and replaced at the next question', async () => {
    const told: string[] = [];
    let started = 0;
    const start = () => {
      started += 1;
      return new Worker("require('node:worker_threads').parentPort.on('message', () => process.exit())", {
        eval: true,
      });
    };
    const { compute, close } = planThread({ limitMs: AMPLE_MS, tell: (words) => void told.push(words), start });
    onTestFinished(() => close());
    expect(await compute('next moulds', { yard: late })).toBeNull();
    expect(await compute('next moulds', { yard: late })).toBeNull();
    expect(started).toBe(2);
    expect(told).toEqual(Array(2).fill('A calculation ended without an answer. Nothing was changed by it.'));
  });

  test('that is closed answers nothing, not even what waited', async () => {
    const { compute, close } = thread(AMPLE_MS);
    const waiting = [compute('better plan', endless()), compute('next moulds', { yard: late })];
    await close();
    expect(await Promise.all(waiting)).toEqual([null, null]);
    expect(await compute('next moulds', { yard: late })).toBeNull();
  });
});
