import { expect, test } from 'vitest';
import type { StockEntry } from '../../../shared/stock-entry.ts';
import { notThereBy } from './stock-kept.ts';

const line = (of: Partial<StockEntry>): StockEntry => ({
  ...{ at: '2027-04-10T09:00:00Z', material: 'mortar', kind: 'used', quantity: -1 },
  ...of,
});

test('cuts of no stick and bags past their date are read off the stock book', () => {
  const book = [
    line({ kind: 'cut', material: 'rod', quantity: -1 }),
    line({ kind: 'cut', material: 'rod', quantity: 0, beyond: 1 }),
    line({ useBy: '2027-04-10' }),
    line({ useBy: '2027-04-09' }),
    line({ kind: 'spoiled', useBy: '2027-04-09' }),
    line({ useBy: '2027-05-01', openedAt: '2027-04-03T09:00:00Z' }),
    line({ useBy: '2027-05-01', openedAt: '2027-04-02T09:00:00Z' }),
  ];
  expect(notThereBy(book, [{ id: 'mortar', openedDays: 7 }, { id: 'rod' }], 'Europe/Dublin')).toEqual({
    ...{ cutsOfNone: 1, pastDate: 2 },
  });
});
