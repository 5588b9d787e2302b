import { describe, expect, test } from 'vitest';
import { rowsTyped } from '../../../src/usecases/typed/form-fields.ts';
import { type OrderReading, orderTyped } from '../../../src/usecases/typed/order-form.ts';

const how: OrderReading = {
  today: '2027-04-05',
  system: 'metric',
  keptIn: (what) => (what === 'material:rod' ? 'kg' : ''),
};

describe('the form of an order', () => {
  test('is read row by row, with days as people write them and amounts in any unit', () => {
    const fields = {
      customer: 'Moran',
      what0: 'kit:trough',
      quantity0: '2',
      what3: 'material:rod',
      quantity3: '500 g',
    };
    const draft = orderTyped({ ...fields, wantedOn: '8 May' }, how);
    expect(draft).toMatchObject({ customer: 'Moran', wantedOn: '2027-05-08', promisedOn: null, unread: [] });
    expect(draft.slip).toBe('rather not');
    expect(draft.lines).toEqual([
      { row: 0, line: { kit: 'trough', quantity: 2 } },
      { row: 3, line: { material: 'rod', quantity: 0.5 } },
    ]);
  });

  test('says all that could not be read, each at its field', () => {
    const fields = { what0: 'kit:trough', quantity0: 'two', quantity1: '3', promisedOn: '31 Apr', slip: 'perhaps' };
    const paths = orderTyped(fields, how).unread.map(({ path }) => path);
    expect(paths.sort()).toEqual(['promisedOn', 'quantity0', 'slip', 'what1']);
  });
});

test.each([
  [{}, 2],
  [{ what0: 'kit:trough', what4: '' }, 5],
  [{ what0: 'kit:trough', more: '7' }, 7],
  [{ more: '99' }, 30],
])('%j has %i rows', (fields, rows) => {
  expect(rowsTyped(fields as Record<string, string>, 'what', { first: 2, most: 30 })).toBe(rows);
});
