import type { StoredIncoming, StoredMaterial } from '../../../db/stores/material-store.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { shownAmount } from '../typed/measures.ts';
import type { NotArrivedFacts } from './today-model.ts';

/** Goods that were to be here before a day, and nobody said that they are: the plan counts on them all the same. */
export const notArrived = (
  coming: readonly StoredIncoming[],
  materials: readonly Pick<StoredMaterial, 'id' | 'name' | 'unit'>[],
  { day, system }: { day: string; system: UnitSystem },
): NotArrivedFacts[] =>
  coming
    .filter(({ on }) => on < day)
    .flatMap(({ id: goods, material, quantity, on: by }) => {
      const found = materials.find(({ id }) => id === material);
      return found ? [{ goods, name: found.name, ...shownAmount({ quantity, unit: found.unit }, system), by }] : [];
    });
