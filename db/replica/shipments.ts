import type { Client, InStatement } from '@libsql/client';
import { sql } from 'drizzle-orm';
import type { Tx } from '../transaction.ts';

/*
 * Every write that a server took, with the number that comes next: whoever worked on older data has the number of somebody
 * else, and is refused by the key. It lies beside the tables of a yard, on servers alone, and no archive has it.
 */

export const SHIPMENTS_TABLE =
  'create table if not exists "shipments" ("n" integer primary key, "mark" text not null unique)';

/** A server that is asked whether it took a write is asked within seconds. */
const KEPT = 1000;

/** What has to come before the writes of one transaction that was rehearsed after `last`. */
export const asNext = (last: number, mark: string): InStatement[] => [
  { sql: 'insert into "shipments" ("n", "mark") values (?, ?)', args: [last + 1, mark] },
  { sql: 'delete from "shipments" where "n" <= ?', args: [last + 1 - KEPT] },
];

/** The number of the last write that a replica knows of, inside a transaction; 0 before the first. */
export const lastShipment = async (tx: Tx): Promise<number> => {
  const [row] = await tx.values<[number | null]>(sql`select max("n") from "shipments"`);
  return Number(row?.[0] ?? 0);
};

/** Which of the marks the server took, as far as a replica knows; null for none. */
export const takenMark = async (client: Client, marks: readonly string[]): Promise<string | null> => {
  if (marks.length === 0) return null;
  const places = marks.map(() => '?').join(', ');
  const { rows } = await client.execute({
    sql: `select "mark" from "shipments" where "mark" in (${places})`,
    args: [...marks],
  });
  return rows[0] === undefined ? null : String(rows[0][0]);
};
