import { and, asc, desc, eq, gt, isNotNull, isNull, sql } from 'drizzle-orm';
import type { Material } from '../../shared/material.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { incomings, materials } from '../tables/material.ts';
import type { Tx } from '../transaction.ts';
import { nextPosition } from './rows.ts';
import { moveInStock, type StockReason, setOffcuts, setOnHand, setRests } from './stock-store.ts';

type MaterialRow = typeof materials.$inferSelect;
/** A material as in a yard file, with null for what is not said of it, its place in the stock book, and notes. */
export type StoredMaterial = MaterialRow;
/**
 * Goods that were bought: `on` is the day they are to come, `arrivedOn` the day they came, null until then. `quantity`
 * counts in the material's unit, `price` is for all of it.
 */
export type StoredIncoming = Omit<typeof incomings.$inferSelect, 'position'>;

/** All materials, in the order of the stock book. */
export const materialsInOrder = (tx: Tx): Promise<StoredMaterial[]> =>
  tx.select().from(materials).orderBy(asc(materials.position));

/** One material, or null where none has that id. */
export const materialById = async (tx: Tx, id: string): Promise<StoredMaterial | null> =>
  (await tx.select().from(materials).where(eq(materials.id, id)))[0] ?? null;

/**
 * Sets what the patch has of a material; null takes away what may be left out. How much there is is the stock book's to say
 * (`setOnHand`, `setRests`).
 */
export const updateMaterial = async (
  tx: Tx,
  id: string,
  patch: Partial<Omit<MaterialRow, 'id' | 'position' | 'onHand' | 'rests'>>,
): Promise<void> => {
  await tx.update(materials).set(patch).where(eq(materials.id, id));
};

/** Puts a material last in the stock book, with what there is of it at an instant. */
export const addMaterial = async (tx: Tx, material: Material, at: string): Promise<void> => {
  await tx
    .insert(materials)
    .values({ ...material, onHand: 0, rests: null, position: await nextPosition(tx, materials) });
  const opening: StockReason = { kind: 'opening', at };
  await setOnHand(tx, material.id, material.onHand, opening);
  await setOffcuts(tx, material.id, material.offcuts ?? [], opening);
  await setRests(tx, material.id, material.rests ?? [], opening);
};

/** Takes a material out of the stock book, with what had come of it; nothing may need it any more. */
export const removeMaterial = async (tx: Tx, id: string): Promise<void> => {
  await tx.delete(incomings).where(and(eq(incomings.material, id), isNotNull(incomings.arrivedOn)));
  await tx.delete(materials).where(eq(materials.id, id));
};

const incomingColumns = {
  id: incomings.id,
  material: incomings.material,
  quantity: incomings.quantity,
  on: incomings.on,
  firstOn: incomings.firstOn,
  boughtOn: incomings.boughtOn,
  price: incomings.price,
  arrivedOn: incomings.arrivedOn,
  useBy: incomings.useBy,
};

/** As in the yard file, at the same places. */
export const onTheirWay = (tx: Tx): Promise<StoredIncoming[]> =>
  tx.select(incomingColumns).from(incomings).where(isNull(incomings.arrivedOn)).orderBy(asc(incomings.position));

/** More deliveries than that are not in a yard at once. */
const ARRIVALS_READ = 100;

/** What came: how much, on which day, and the date on the bags where they have one. */
interface StoredArrival extends Pick<StoredIncoming, 'quantity' | 'useBy'> {
  arrivedOn: string;
}

/** What came of a material, the last first, a hundred deliveries at most: more are not in a yard at once. */
export const arrivalsOf = async (tx: Tx, material: string): Promise<StoredArrival[]> => {
  const rows = await tx
    .select(incomingColumns)
    .from(incomings)
    .where(and(eq(incomings.material, material), isNotNull(incomings.arrivedOn)))
    .orderBy(desc(incomings.arrivedOn), desc(incomings.id))
    .limit(ARRIVALS_READ);
  return rows.flatMap(({ quantity, arrivedOn, useBy }) => (arrivedOn === null ? [] : [{ quantity, arrivedOn, useBy }]));
};

/** What came of all that the mixes of a yard are made of, by material, as `arrivalsOf` has it. */
export const deliveriesForMixes = async (tx: Tx, { mixes }: Pick<YardFile, 'mixes'>) => {
  const materials = new Set(mixes.flatMap(({ perBag }) => perBag.map(({ material }) => material)));
  return new Map(await Promise.all([...materials].map(async (id) => [id, await arrivalsOf(tx, id)] as const)));
};

/** Goods bought, on their way or arrived; null where there are none of that id. */
export const incomingById = async (tx: Tx, id: number): Promise<StoredIncoming | null> =>
  (await tx.select(incomingColumns).from(incomings).where(eq(incomings.id, id)))[0] ?? null;

/** Puts goods last among those on their way. Their new id. */
export const addIncoming = async (
  tx: Tx,
  goods: Omit<StoredIncoming, 'id' | 'firstOn' | 'arrivedOn' | 'useBy'> & { firstOn?: string | null },
): Promise<number> => {
  const position = await nextPosition(tx, incomings);
  const [added] = await tx
    .insert(incomings)
    .values({ ...goods, position })
    .returning();
  if (!added) throw new Error(`The goods on their way (${goods.material}) were not added.`);
  return added.id;
};

/**
 * They are in the yard on a date, from an instant on: into stock, and no longer on their way; `came` is how much, in the material's unit,
 * where it is not what was bought, `useBy` the date on the bags. Goods that arrived already, or are not there, change nothing.
 */
export const markArrived = async (
  tx: Tx,
  id: number,
  { on, at, came, useBy }: { on: string; at: string; came?: number; useBy?: string | undefined },
): Promise<void> => {
  const goods = await incomingById(tx, id);
  if (!goods || goods.arrivedOn !== null) return;
  const quantity = came ?? goods.quantity;
  await tx
    .update(incomings)
    .set({ arrivedOn: on, quantity, useBy: useBy ?? null })
    .where(eq(incomings.id, id));
  const bags = useBy === undefined ? {} : { useBy };
  await moveInStock(tx, { material: goods.material, kind: 'received', at, quantity, ...bags });
};

/** Sets what was paid for all of some goods, in the yard's money; null: nobody said. */
export const setPricePaid = async (tx: Tx, id: number, price: number | null): Promise<void> => {
  await tx.update(incomings).set({ price }).where(eq(incomings.id, id));
};

/** They are expected on another date; the one that was said first is kept. */
export const setExpected = async (tx: Tx, id: number, on: string): Promise<void> => {
  await tx
    .update(incomings)
    .set({ on, firstOn: sql`coalesce(${incomings.firstOn}, ${incomings.on})` })
    .where(eq(incomings.id, id));
};

/** Goods that were to come on a later day than they were bought on, and came: whose they are, for when that was said first, and when it was. */
export const deliveriesCame = async (
  tx: Tx,
): Promise<{ supplier: string | null; saidFor: string; cameOn: string }[]> => {
  const saidFor = sql<string>`coalesce(${incomings.firstOn}, ${incomings.on})`;
  const rows = await tx
    .select({ supplier: materials.supplier, saidFor, cameOn: incomings.arrivedOn })
    .from(incomings)
    .innerJoin(materials, eq(materials.id, incomings.material))
    .where(and(isNotNull(incomings.arrivedOn), gt(saidFor, sql`coalesce(${incomings.boughtOn}, '')`)))
    .orderBy(asc(incomings.id));
  return rows.flatMap(({ cameOn, ...row }) => (cameOn === null ? [] : [{ ...row, cameOn }]));
};

/** Takes goods bought off the list, as if they never had been; stock stays as it is. */
export const removeIncoming = async (tx: Tx, id: number): Promise<void> => {
  await tx.delete(incomings).where(eq(incomings.id, id));
};
