import { expect, test, vi } from 'vitest';
import type { decode } from '../../src/engine/decoder/decode.ts';
import { demoScreens } from '../support/screens.ts';

const plans = vi.hoisted(() => ({ decoded: 0 }));

vi.mock('../../src/engine/decoder/decode.ts', async (original) => {
  const real = await original<{ decode: typeof decode }>();
  const counted: typeof decode = (...asked) => {
    plans.decoded += 1;
    return real.decode(...asked);
  };
  return { ...real, decode: counted };
});

// The page asks again while somebody types. A plan of the demo is decoded in about a millisecond: a hundred of them leave
// the answer there before the next key. How long it takes in all stands in `npm run bench -- quote`.
test('a live question is answered with a hundred plans decoded at most', async () => {
  const { get } = await demoScreens();
  const ask = (number: number) => get(`/?what=kit:planter&number=${number}`, { 'HX-Request-Type': 'partial' });
  await ask(1);
  for (const number of [2, 3, 4, 5, 6]) {
    plans.decoded = 0;
    expect((await ask(number)).status).toBe(200);
    expect(plans.decoded, `${number} planters`).toBeGreaterThan(0);
    expect(plans.decoded, `${number} planters`).toBeLessThanOrEqual(100);
  }
});
