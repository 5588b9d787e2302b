import { expect, test } from 'vitest';
import type { StockEntry } from '../../../shared/stock-entry.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import { goodsPerPiece } from '../../../src/engine/season/goods-per-piece.ts';
import { smallYard } from '../../support/small-yard.ts';

const at = '2027-04-10T09:00:00Z';
const poured = (moulds: string[]): WorkRecord => ({
  ...{ kind: 'poured', at, mix: 'thin', bags: 1 },
  pours: moulds.map((mould) => ({ mould, casting: 'panel-900', filledAt: at })),
});
const line = (kind: StockEntry['kind'], quantity: number, more: Partial<StockEntry> = {}): StockEntry => ({
  ...{ at, material: 'mortar', kind, quantity, ...more },
});
const work = { mix: 'thin', mould: '900 no. 1', at };

// Two panels of 13.6 kg by a bag that fills 27.5 kg: 27.2 / 27.5 = 0.98909 bags by the recipe, one taken.
test('what a batch took stands beside the recipe, with what counts found and what was spoiled', () => {
  const book = [line('used', -1, { work }), line('counted', -0.5), line('spoiled', -2), line('received', 10)];
  const [mortar, ...others] = goodsPerPiece([poured(['900 no. 1', '900 no. 2'])], book, smallYard());
  expect(others).toEqual([]);
  expect(mortar).toMatchObject({ pieces: 2, taken: 1, counted: 1.5, spoiled: 2 });
  expect(mortar!.recipe).toBeCloseTo(27.2 / 27.5, 12);
});

test('nothing is told where the book names no batch, and orders are none', () => {
  const book = [line('used', -1), line('used', -1, { work: { order: '27-001' } })];
  expect(goodsPerPiece([poured(['900 no. 1'])], book, smallYard())).toEqual([]);
});
