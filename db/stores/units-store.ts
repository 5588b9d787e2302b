import type { UnitSystem } from '../../shared/units.ts';
import { yardUnits } from '../tables/units.ts';
import type { Tx } from '../transaction.ts';

/** What the yard measures with: metric until it says otherwise. */
export const unitsOfYard = async (tx: Tx): Promise<UnitSystem> => {
  const [row] = await tx.select().from(yardUnits);
  return row?.system ?? 'metric';
};

/** Sets what the yard measures with. Nothing that is stored changes: it is all in SI. */
export const setUnits = async (tx: Tx, system: UnitSystem): Promise<void> => {
  await tx.insert(yardUnits).values({ id: 1, system }).onConflictDoUpdate({ target: yardUnits.id, set: { system } });
};
