import { expect, test } from 'vitest';
import type { OrderFacts } from '../../../src/usecases/orders/order-facts.ts';
import { ordersShown } from '../../../src/usecases/orders/orders-shown.ts';

const order = {} as OrderFacts;
const day = (date: string, count: number) => ({ date, orders: Array.from({ length: count }, () => order) });

test('pages of orders have every day once, whole, in turn', () => {
  const days = Array.from({ length: 28 }, (_, i) => day(`2027-05-${String(i + 1).padStart(2, '0')}`, (i * 7) % 23));
  const seen: string[] = [];
  let from: string | null = null;
  let pages = 0;
  do {
    const { shown, laterFrom }: ReturnType<typeof ordersShown> = ordersShown(days, from);
    seen.push(...shown.map(({ date }) => date));
    from = laterFrom;
    pages += 1;
  } while (from !== null);
  expect(seen).toEqual(days.map(({ date }) => date));
  expect(pages).toBeGreaterThan(2);
});

test('a small yard is one page, and a day with more than a page of orders is whole', () => {
  const few = [day('2027-05-01', 3), day('2027-05-02', 80)];
  expect(ordersShown(few, null)).toEqual({ shown: few, laterFrom: null });
  const many = [day('2027-05-01', 300), day('2027-05-02', 1)];
  expect(ordersShown(many, null)).toEqual({ shown: [many[0]], laterFrom: '2027-05-02' });
  expect(ordersShown(many, '2027-05-02')).toEqual({ shown: [many[1]], laterFrom: null });
});
