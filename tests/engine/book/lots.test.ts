import { expect, test } from 'vitest';
import type { FinishedPieces } from '../../../shared/mould.ts';
import type { Entry } from '../../../src/engine/book/entry.ts';
import { changePieces, placesAfter } from '../../../src/engine/book/lots.ts';
import { saturday } from '../../support/planned-yard.ts';

const lot = (count: number, order?: string): FinishedPieces => ({
  ...{ casting: 'panel-900', count },
  ...(order === undefined ? {} : { order }),
});
const changed = (pieces: FinishedPieces[], entry: Entry) => changePieces(pieces, entry, (fresh) => fresh);

test('pieces that come in are last, with what is known of them', () => {
  const readyAt = saturday('11:00');
  const casting = 'panel-900';
  expect(changed([lot(1)], { kind: 'pieces in', lot: { casting, readyAt, order: '27-001' }, count: 2 })).toEqual([
    lot(1),
    { casting, count: 2, readyAt, order: '27-001' },
  ]);
  expect(changed([], { kind: 'pieces in', lot: { casting, readyAt: null, order: null }, count: 1 })).toEqual([lot(1)]);
});

test('what is used up goes, and later ones move up', () => {
  const out = (count: number): Entry => ({ kind: 'pieces out', place: 1, count });
  const three = [lot(5), lot(2), lot(7)];
  expect(changed(three, out(1))).toEqual([lot(5), lot(1), lot(7)]);
  expect(changed(three, out(2))).toEqual([lot(5), lot(7)]);
  expect(changed(three, out(3))).toEqual([lot(5), lot(7)]);
});

test('pieces freed from an order are for nobody, those of another stay', () => {
  expect(changed([lot(1, 'a'), lot(2, 'b')], { kind: 'freed', order: 'a' })).toEqual([lot(1), lot(2, 'b')]);
});

test('another entry leaves the pieces as they are', () => {
  expect(changed([lot(1)], { kind: 'emptied', mould: 'x' })).toEqual([lot(1)]);
});

// Of places 0, 1 and 2 the second is used up, and what came in stood nowhere before.
test('places after some entries are known by the places before', () => {
  const entries: Entry[] = [
    { kind: 'pieces in', lot: { casting: 'panel-900', readyAt: null, order: null }, count: 1 },
    { kind: 'pieces out', place: 1, count: 2 },
  ];
  expect([...placesAfter([lot(1), lot(2), lot(3)], entries)]).toEqual([
    [0, 0],
    [2, 1],
  ]);
});
