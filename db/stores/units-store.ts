import { type English, englishOf } from '../../shared/english.ts';
import type { UnitSystem } from '../../shared/units.ts';
import { yardUnits } from '../tables/units.ts';
import type { Tx } from '../transaction.ts';

/** What the yard measures with: metric until it says otherwise. */
export const unitsOfYard = async (tx: Tx): Promise<UnitSystem> => {
  const [row] = await tx.select().from(yardUnits);
  return row?.system ?? 'metric';
};

/** The English that the yard is written in: by its units until it says otherwise. */
export const englishOfYard = async (tx: Tx): Promise<English> => {
  const [row] = await tx.select().from(yardUnits);
  return row?.english ?? englishOf(row?.system ?? 'metric');
};

/**
 * Sets what the yard measures with and the English it is written in; null for the one by its units. Nothing that is stored
 * changes: it is all in SI, and what the yard typed stays as it is.
 */
export const setUnits = async (tx: Tx, system: UnitSystem, english: English | null = null): Promise<void> => {
  const set = { system, english };
  await tx
    .insert(yardUnits)
    .values({ id: 1, ...set })
    .onConflictDoUpdate({ target: yardUnits.id, set });
};
