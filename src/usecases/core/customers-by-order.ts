import type { YardFile } from '../../../shared/yard-file.ts';

/** Whose each open order is, by its number: "order 27-003" where no customer is recorded. */
export const customersByOrder = ({ orders }: Pick<YardFile, 'orders'>): ReadonlyMap<string, string> =>
  new Map(orders.map(({ id, customer }) => [id, customer ?? `order ${id}`]));
