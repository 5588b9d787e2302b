import type { StoredIncoming, StoredMaterial } from '../../../db/stores/material-store.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { shownAmount } from '../typed/measures.ts';
import type { NotArrivedFacts } from './today-model.ts';

/**
 * Goods that were to be here before a day, and nobody said that they are: the plan takes them to come by the time of that day by
 * which the yard is brought things.
 */
export const notArrived = (
  coming: readonly StoredIncoming[],
  materials: readonly Pick<StoredMaterial, 'id' | 'name' | 'unit'>[],
  { day, system, deliveredBy }: { day: string; system: UnitSystem; deliveredBy: string },
): NotArrivedFacts[] =>
  coming
    .filter(({ on }) => on < day)
    .flatMap(({ id: goods, material, quantity, on: by }) => {
      const found = materials.find(({ id }) => id === material);
      const countedBy = deliveredBy === '00:00' ? null : deliveredBy;
      const amount = found && shownAmount({ quantity, unit: found.unit }, system);
      return found && amount ? [{ goods, name: found.name, ...amount, by, countedBy }] : [];
    });
