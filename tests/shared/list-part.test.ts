import { expect, test } from 'vitest';
import { listPart } from '../../shared/list-part.ts';

const LETTERS = ['a', 'b', 'c', 'd', 'e'];

test('a part has as many as were asked for, and says where the parts beside it begin', () => {
  expect(listPart(LETTERS, 0, { most: 2 })).toEqual({ items: ['a', 'b'], from: 0, all: 5, before: null, after: 2 });
  expect(listPart(LETTERS, 2, { most: 2 })).toEqual({ items: ['c', 'd'], from: 2, all: 5, before: 0, after: 4 });
  expect(listPart(LETTERS, 4, { most: 2 })).toEqual({ items: ['e'], from: 4, all: 5, before: 2, after: null });
});

test('whatever is asked for, it is one of the same parts: in the middle of one that one, past the end the first', () => {
  expect(listPart(LETTERS, 3, { most: 2 })).toEqual(listPart(LETTERS, 2, { most: 2 }));
  for (const from of [5, 999]) expect(listPart(LETTERS, from, { most: 2 })).toEqual(listPart(LETTERS, 0, { most: 2 }));
  expect(listPart([], 3, { most: 2 })).toEqual({ items: [], from: 0, all: 0, before: null, after: null });
});

test('what weighs more leaves less room, and what is too heavy by itself is a part of its own', () => {
  const weigh = (letter: string) => (letter === 'c' ? 9 : 1);
  const froms = [0, 2, 3].map((from) => listPart(LETTERS, from, { most: 3, weigh }).items.join(''));
  expect(froms).toEqual(['ab', 'c', 'de']);
});
