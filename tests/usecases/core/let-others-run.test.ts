import { expect, test } from 'vitest';
import { mapInTurns } from '../../../src/usecases/core/let-others-run.ts';
import { turnsDuring } from '../../support/turns-during.ts';

test.each([0, 1, 250, 251, 1000])('%i entries are mapped one after another, in order', async (length) => {
  const list = Array.from({ length }, (_, i) => i);
  expect(await mapInTurns(list, (n) => n * 2)).toEqual(list.map((n) => n * 2));
});

test('others have their turn while a long list is worked through, and need not for a short one', async () => {
  const turnsOf = (length: number) => turnsDuring(() => mapInTurns(Array.from({ length }), () => null));
  expect(await turnsOf(1000)).toBeGreaterThanOrEqual(3);
  expect(await turnsOf(100)).toBe(0);
});

test('what fails fails', async () => {
  await expect(
    mapInTurns([1, 2], (n) => {
      if (n === 2) throw new Error('no');
      return n;
    }),
  ).rejects.toThrow('no');
});
