import { isDeepStrictEqual } from 'node:util';
import { placesOf } from './put-rows.ts';

/**
 * The entry with null for each of these fields that it leaves out, as a column without a value has it.
 *
 * Example: `filled({ id: 'a' }, 'note')` is `{ note: null, id: 'a' }`.
 */
export const filled = <T extends object, K extends keyof T>(
  entry: T,
  ...keys: K[]
): Omit<T, K> & { [P in K]-?: Exclude<T[P], undefined> | null } =>
  ({ ...Object.fromEntries(keys.map((key) => [key, null])), ...entry }) as never;

/** The entries of a list inside each owner, each with the id of its owner under `key` and its place, from 0. */
export const inside = <O extends { id: string }, K extends string, E extends object>(
  owners: readonly O[],
  key: K,
  list: (owner: O) => readonly E[],
) =>
  owners.flatMap((owner) =>
    list(owner).map((entry, position) => ({ ...entry, position, ...({ [key]: owner.id } as Record<K, string>) })),
  );

/**
 * Entries with a name of their own, each in the place it has now where the order of the list allows that (`placesOf`).
 */
export const placed = <E extends object>(
  entries: readonly E[],
  held: readonly { position: number }[],
  nameOf: (entry: E) => string,
  nameOfRow: (row: never) => string,
  from = 0,
): (E & { position: number })[] => {
  const now = new Map(held.map((row) => [nameOfRow(row as never), row.position]));
  const places = placesOf(
    entries.map((entry) => now.get(nameOf(entry))),
    from,
  );
  return entries.map((entry, index) => ({ ...entry, position: places[index] ?? index }));
};

const byId = ({ id }: { id: string }) => id;

/** The same for entries that are known by their id. A list whose order has changed is counted anew from `from`. */
export const placedById = <E extends { id: string }>(
  entries: readonly E[],
  held: readonly { id: string; position: number }[],
  from = 0,
) => placed(entries, held, byId, byId, from);

/**
 * Entries without a name, each over the row that says the same (as `said` tells), where there is one: its id stays, and
 * what the entry does not say of it. An entry that has no such row stands over `blank`.
 */
export const listed = <E extends object, R extends { position: number }, B extends object>(
  entries: readonly E[],
  held: readonly R[],
  said: (row: R) => object,
  blank: B,
): ((Omit<R, 'id' | keyof E> | Omit<B, keyof E>) & E & { position: number; id?: number })[] => {
  const free = held.map((row) => ({ row, text: said(row) }));
  const rows = entries.map((entry) => {
    const at = free.findIndex(({ text }) => isDeepStrictEqual(text, entry));
    return at < 0 ? undefined : free.splice(at, 1)[0]?.row;
  });
  const places = placesOf(rows.map((row) => row?.position));
  return entries.map((entry, index) => ({
    ...(rows[index] ?? blank),
    ...entry,
    position: places[index] ?? index,
  })) as never;
};
