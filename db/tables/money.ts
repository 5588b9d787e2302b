import { sql } from 'drizzle-orm';
import { check, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { KeptEstimate, OrderPaper, OrderQuote } from '../../shared/money.ts';
import { kits } from './kit.ts';
import { aboveZero, dates, flags, neverNegative, position } from './limits.ts';
import { orders } from './order.ts';

/** What costs are reckoned by, in the yard's money. One row, or none. No rule of planning reads it. */
export const yardCosts = sqliteTable(
  'yardCosts',
  {
    id: integer().primaryKey(),
    /** An hour of one person's work. */
    wageHour: real(),
    /** What a session costs, whatever is made in it. */
    sessionFixed: real(),
    rejectPercent: real(),
    marginPercent: real(),
    /** Of moulds that say nothing of their own. */
    mouldCost: real(),
    mouldTurns: integer(),
    /** What stock costs in a year, of what was paid for it. */
    holdingPercent: real(),
  },
  (t) => [
    check('one_yard_costs', sql`${t.id} = 1`),
    ...neverNegative([t.wageHour, t.sessionFixed, t.rejectPercent, t.marginPercent, t.mouldCost, t.holdingPercent]),
    ...aboveZero([t.mouldTurns]),
  ],
);

/** What is asked for a kit, where that is not by the margin. */
export const kitPrices = sqliteTable(
  'kitPrices',
  {
    kit: text()
      .primaryKey()
      .references(() => kits.id, { onDelete: 'cascade' }),
    price: real().notNull(),
  },
  (t) => neverNegative([t.price]),
);

/** What is asked for an order, and what it was reckoned to cost then. */
export const orderMoney = sqliteTable(
  'orderMoney',
  {
    order: text()
      .primaryKey()
      .references(() => orders.id, { onDelete: 'cascade' }),
    price: real(),
    deposit: real(),
    estimate: text({ mode: 'json' }).$type<KeptEstimate>(),
    /** The last quote of those that were given before all were kept. */
    quote: text({ mode: 'json' }).$type<OrderQuote>(),
    /** Quotes and bills as they were sent, in that order. */
    papers: text({ mode: 'json' }).$type<OrderPaper[]>(),
  },
  (t) => neverNegative([t.price, t.deposit]),
);

/** Money that came for an order, or went back. */
export const orderPayments = sqliteTable(
  'orderPayments',
  {
    id: integer().primaryKey({ autoIncrement: true }),
    position: position(),
    order: text()
      .notNull()
      .references(() => orders.id, { onDelete: 'cascade' }),
    on: text().notNull(),
    amount: real().notNull(),
    back: integer({ mode: 'boolean' }).notNull(),
    note: text(),
  },
  (t) => [...dates([t.on]), ...neverNegative([t.amount]), ...flags([t.back])],
);
