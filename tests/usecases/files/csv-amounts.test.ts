import { expect, test } from 'vitest';
import { POINTS } from '../../../src/engine/csv/dialect.ts';
import { amountOf, inRowUnit } from '../../../src/usecases/files/csv-amounts.ts';

const own = { perUnit: 1, system: 'metric' } as const;

test('what a sum of fractions left behind is not written, and reading it again changes nothing', () => {
  const now = 6.5760000000000005;
  expect(inRowUnit(now, own)).toBe(6.576);
  expect(amountOf('6.576', { stored: 'm2', now }, own, POINTS)).toEqual({ ok: true, value: now });
  expect(amountOf('6.577', { stored: 'm2', now }, own, POINTS)).toEqual({ ok: true, value: 6.577 });
});
