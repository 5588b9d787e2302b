import { expect, test } from 'vitest';
import { mergeMeanwhile } from '../../../src/usecases/orders/changed-meanwhile.ts';

const base = { customer: 'Ann', note: '', slip: 'not', what0: 'kit:pair', quantity0: '2' };
const nameOf = (what: string) => (what === 'kit:pair' ? 'Pair of panels' : 'Panel 900');

test('lines that only the other one changed are taken over, and said', () => {
  const now = { ...base, quantity0: '3', what1: 'casting:a', quantity1: '1' };
  const { typed, errors } = mergeMeanwhile({ base, now, typed: { ...base, note: 'Mine' } }, nameOf);
  expect(typed).toEqual({ ...now, note: 'Mine' });
  expect(errors).toEqual({ what0: 'It was changed meanwhile, from 2 × Pair of panels.' });
});

test('lines that both changed stand as they were typed, and say what the other one made of them', () => {
  const typed = { ...base, quantity0: '5' };
  const merged = mergeMeanwhile({ base, now: { ...base, quantity0: '3' }, typed }, nameOf);
  expect(merged.typed).toEqual(typed);
  expect(merged.errors.what0).toBe('It was changed to 3 × Pair of panels meanwhile. What you typed still stands here.');
});

test('what nobody else changed says nothing', () => {
  expect(mergeMeanwhile({ base, now: base, typed: { ...base, customer: 'Eve' } }, nameOf)).toEqual({
    typed: { ...base, customer: 'Eve' },
    errors: {},
  });
});
