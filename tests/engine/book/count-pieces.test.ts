import { describe, expect, test } from 'vitest';
import type { YardFile } from '../../../shared/yard-file.ts';
import { apply } from '../../../src/engine/book/apply.ts';
import { countPieces } from '../../../src/engine/book/count-pieces.ts';
import { smallYard } from '../../support/small-yard.ts';

const LATER = '2027-04-20T09:00:00+01:00';
const NOW = '2027-04-01T09:00:00+01:00';
const yard: YardFile = {
  ...smallYard(),
  finished: [
    { casting: 'panel-900', count: 1, order: '27-001' },
    { casting: 'panel-900', count: 3, readyAt: LATER },
    { casting: 'panel-800', count: 4 },
    { casting: 'panel-900', count: 2, readyAt: NOW },
  ],
};
const leftAfter = (counted: number): YardFile['finished'] =>
  apply(yard, countPieces(yard, 'panel-900', counted)).finished;

describe('after pieces were counted the book has as many', () => {
  test.each([0, 1, 2, 3, 4, 5, 6, 7, 20])('%i of them, and of no other kind is one more or fewer', (counted) => {
    const totalOf = (casting: string) =>
      leftAfter(counted).reduce((sum, lot) => sum + (lot.casting === casting ? lot.count : 0), 0);
    expect([totalOf('panel-900'), totalOf('panel-800')]).toEqual([counted, 4]);
  });

  test('more come in fit to go out and for nobody', () => {
    expect(leftAfter(8).at(-1)).toEqual({ casting: 'panel-900', count: 2 });
  });

  test('of too many those for nobody go first, what is fit before what cures, and last what is set aside', () => {
    const left = (counted: number) => leftAfter(counted).filter(({ casting }) => casting === 'panel-900');
    expect(left(5).map(({ count }) => count)).toEqual([1, 3, 1]);
    expect(left(3).map(({ count }) => count)).toEqual([1, 2]);
    expect(left(1)).toEqual([{ casting: 'panel-900', count: 1, order: '27-001' }]);
  });
});
