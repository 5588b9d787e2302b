import { sql } from 'drizzle-orm';
import { check, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { ORDER_STATUSES } from '../../shared/archived-order.ts';
import { castings } from './casting.ts';
import { customers } from './customer.ts';
import { kits } from './kit.ts';
import { dates, neverEmpty, neverNegative, oneOf, position } from './limits.ts';
import { materials } from './material.ts';

export const orders = sqliteTable(
  'orders',
  {
    /** Year and running number: "27-014". */
    id: text().primaryKey(),
    position: position(),
    customerId: integer().references(() => customers.id),
    wantedOn: text(),
    /** Nothing is poured for it before this day. */
    notBefore: text(),
    promisedOn: text(),
    /** The date that was given first, whatever became of it; empty where none was, or it was not kept down yet. */
    firstPromisedOn: text(),
    /** A date held for a customer until the end of this day; empty once it is a firm order. */
    heldUntil: text(),
    status: text({ enum: ORDER_STATUSES }).notNull(),
    weight: real().notNull(),
    note: text(),
    /** Where it is taken, as it was typed. */
    address: text(),
    takenAt: text(),
    handedOverOn: text(),
    /** Its pieces and parts are out of stock and in its parcel: nothing is left to do for it but to hand it over. */
    packedAt: text(),
    /** So much of its packing is done: its pieces and parts are out of stock. Empty before that, and once it is packed. */
    packedMinutes: integer(),
    /** The order of which this is a part that went out before the rest. */
    partOf: text(),
  },
  (t) => [
    ...neverEmpty([t.id]),
    oneOf(t.status, ORDER_STATUSES),
    ...dates([t.wantedOn, t.notBefore, t.promisedOn, t.firstPromisedOn, t.heldUntil, t.handedOverOn]),
    ...neverNegative([t.weight, t.packedMinutes]),
  ],
);

export const orderLines = sqliteTable(
  'orderLines',
  {
    id: integer().primaryKey({ autoIncrement: true }),
    order: text()
      .notNull()
      .references(() => orders.id),
    position: position(),
    kit: text().references(() => kits.id),
    casting: text().references(() => castings.id),
    material: text().references(() => materials.id),
    quantity: real().notNull(),
  },
  (t) => [
    check('one_thing', sql`(${t.kit} is not null) + (${t.casting} is not null) + (${t.material} is not null) = 1`),
    ...neverNegative([t.quantity]),
  ],
);
