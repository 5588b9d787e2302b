import { expect, test } from 'vitest';
import { quoted, shortened, thereIsNo } from '../../shared/said-back.ts';

test('what was typed is said back in short', () => {
  expect(shortened(' 2 bgas ')).toBe('2 bgas');
  expect(shortened('a'.repeat(40))).toBe('a'.repeat(40));
  expect(shortened('a'.repeat(41))).toBe(`${'a'.repeat(39)}…`);
  // A letter of two halves is not cut in two.
  expect(shortened('😀'.repeat(41))).toBe(`${'😀'.repeat(39)}…`);
  expect(quoted('x'.repeat(4000))).toHaveLength(42);
});

test('nothing named is said to be nothing', () => {
  expect(thereIsNo('mould', '900 no. 9')).toBe('There is no mould 900 no. 9.');
  expect(thereIsNo('mould', ' ')).toBe('Which mould? None was named.');
});
