import { asc, eq, inArray } from 'drizzle-orm';
import type { TemperatureStep } from '../../shared/temperature.ts';
import { temperatureSteps as table } from '../tables/temperature.ts';
import type { Tx } from '../transaction.ts';
import { insertAll, nextPosition } from './rows.ts';

/** A step (°C from 00:00 of a date) with the number it is known by. */
export type StoredStep = TemperatureStep & { id: number };

/** Each with its id, in the order of the yard file. */
export const temperatureSteps = (tx: Tx): Promise<StoredStep[]> =>
  tx.select({ id: table.id, from: table.from, celsius: table.celsius }).from(table).orderBy(asc(table.position));

/** Puts steps last in the list, which need not be in the order of their dates. */
export const addSteps = async (tx: Tx, steps: readonly TemperatureStep[]): Promise<void> => {
  const first = await nextPosition(tx, table);
  await insertAll(
    tx,
    table,
    steps.map(({ from, celsius }, index) => ({ from, celsius, position: first + index })),
  );
};

/** A step anew, in its place. */
export const updateStep = async (tx: Tx, id: number, step: TemperatureStep): Promise<void> => {
  await tx.update(table).set(step).where(eq(table.id, id));
};

/** Takes steps out; none at all is allowed. */
export const removeSteps = async (tx: Tx, ids: readonly number[]): Promise<void> => {
  if (ids.length > 0) await tx.delete(table).where(inArray(table.id, [...ids]));
};
