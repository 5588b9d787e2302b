import { expect, test } from 'vitest';
import { progressText, progressTitle } from '../../../views/orders/progress-text.ts';

const piece = { name: 'Panel 900', inYard: 3, curing: 0, inMoulds: 1, toPour: 4 };

test('pieces are told by how far they are, the furthest first', () => {
  expect(progressText(piece)).toBe('3 in the yard, 1 in a mould and 4 to pour');
  expect(progressText({ ...piece, inYard: 0, curing: 2, inMoulds: 2, toPour: 0 })).toBe('2 curing and 2 in moulds');
});

test('the title counts all of them', () => {
  expect(progressTitle([piece, piece])).toBe('How far its 16 pieces are');
  expect(progressTitle([{ ...piece, inYard: 0, inMoulds: 0, toPour: 1 }])).toBe('How far its one piece is');
});
