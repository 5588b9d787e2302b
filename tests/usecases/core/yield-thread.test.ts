import { expect, test } from 'vitest';
import { mapYielding } from '../../../src/usecases/core/yield-thread.ts';
import { yieldsDuring } from '../../support/yields-during.ts';

test.each([0, 1, 250, 251, 1000])('%i entries are mapped one after another, in order', async (length) => {
  const list = Array.from({ length }, (_, i) => i);
  expect(await mapYielding(list, (n) => n * 2)).toEqual(list.map((n) => n * 2));
});

test('others are let in while a long list is worked through, and need not for a short one', async () => {
  const yieldsOf = (length: number) => yieldsDuring(() => mapYielding(Array.from({ length }), () => null));
  expect(await yieldsOf(1000)).toBeGreaterThanOrEqual(3);
  expect(await yieldsOf(100)).toBe(0);
});

test('what fails fails', async () => {
  await expect(
    mapYielding([1, 2], (n) => {
      if (n === 2) throw new Error('no');
      return n;
    }),
  ).rejects.toThrow('no');
});
