import type { StoredIncoming, StoredMaterial } from '../../../db/stores/material-store.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { shownAmount } from '../typed/measures.ts';
import type { NotArrivedFacts } from './today-model.ts';

/**
 * Goods that were to be here before a day, and nobody said that they are: the plan takes them to come when the yard is brought
 * things next, today or tomorrow.
 */
export const notArrived = (
  coming: readonly StoredIncoming[],
  materials: readonly Pick<StoredMaterial, 'id' | 'name' | 'unit' | 'leadDays'>[],
  { day, system, deliveredBy, clock }: { day: string; system: UnitSystem; deliveredBy: string; clock: string },
): NotArrivedFacts[] =>
  coming
    .filter(({ on }) => on < day)
    .flatMap(({ id: goods, material, quantity, on: by }) => {
      const found = materials.find(({ id }) => id === material);
      const isToCome = clock < deliveredBy && found?.leadDays !== 0;
      const countedBy = isToCome ? deliveredBy : null;
      const amount = found && shownAmount({ quantity, unit: found.unit }, system);
      return found && amount ? [{ goods, name: found.name, ...amount, by, countedBy }] : [];
    });
