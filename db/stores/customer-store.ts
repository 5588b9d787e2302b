import { and, asc, eq, sql } from 'drizzle-orm';
import { customers as table } from '../tables/customer.ts';
import type { Tx } from '../transaction.ts';

/** A customer as stored; without phone or note these are null. */
export type Customer = typeof table.$inferSelect;

/** All customers there ever were, by name, those of one name in the order in which they came. */
export const customers = (tx: Tx): Promise<Customer[]> =>
  tx.select().from(table).orderBy(asc(table.name), asc(table.id));

const updateCustomer = async (tx: Tx, id: number, patch: Partial<Omit<Customer, 'id'>>): Promise<void> => {
  await tx.update(table).set(patch).where(eq(table.id, id));
};

/**
 * The number of the customer of that name and phone, who is added when there is none yet. Two people may share a name,
 * so the phone counts: without one it is the customer of that name who has none. A note that is given replaces theirs.
 */
export const customerNamed = async (
  tx: Tx,
  name: string,
  phone: string | null = null,
  note: string | null = null,
): Promise<number> => {
  const [known] = await tx
    .select()
    .from(table)
    .where(and(eq(table.name, name), sql`${table.phone} is ${phone}`));
  if (!known) {
    const [added] = await tx.insert(table).values({ name, phone, note }).returning();
    if (!added) throw new Error('A customer was not added.');
    return added.id;
  }
  if (note !== null && note !== known.note) await updateCustomer(tx, known.id, { note });
  return known.id;
};
