import { expect, test } from 'vitest';
import type { WorkRecord } from '../../../shared/work-record.ts';
import { piecesMade } from '../../../src/engine/season/pieces-made.ts';

const piece = (mould: string, cameOut: 'good' | 'mend' | 'scrap', reason?: string): WorkRecord => ({
  ...{
    kind: 'stripped',
    at: '2027-04-10T10:00:00Z',
    filledAt: '2027-04-10T08:00:00Z',
    mould,
    casting: 'panel',
    cameOut,
  },
  ...(reason ? { reason } : {}),
});
const mended = (mould: string, cameOut: 'good' | 'scrap'): WorkRecord => ({
  ...{
    kind: 'after mending',
    at: '2027-04-11T10:00:00Z',
    filledAt: '2027-04-10T08:00:00Z',
    mould,
    casting: 'panel',
    cameOut,
  },
});

test('pieces are counted once, by what became of them; reasons by how often they were given', () => {
  const records = [
    ...[piece('a', 'good'), piece('a', 'mend'), piece('a', 'mend'), piece('b', 'scrap', 'corner off')],
    ...[piece('b', 'scrap', 'corner off'), piece('b', 'scrap'), mended('a', 'good'), mended('a', 'scrap')],
  ];
  const { all, castings, moulds, reasons, thrownAway } = piecesMade(records);
  expect(all).toEqual({ out: 6, good: 2, mend: 0, scrap: 4 });
  expect(castings).toEqual([{ id: 'panel', ...all }]);
  expect(moulds).toEqual([
    { id: 'a', out: 3, good: 2, mend: 0, scrap: 1 },
    { id: 'b', out: 3, good: 0, mend: 0, scrap: 3 },
  ]);
  expect(reasons).toEqual([
    { reason: null, count: 2 },
    { reason: 'corner off', count: 2 },
  ]);
  expect(thrownAway).toBe(0);
});
