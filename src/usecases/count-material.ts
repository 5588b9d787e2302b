import { materialById, updateMaterial } from '../../db/stores/material-store.ts';
import { type Changed, changing } from './changing.ts';
import { done, type Outcome, refuse, type UseCaseContext } from './context.ts';

const figure = (quantity: number): string => String(Number(quantity.toFixed(2)));

/** The maker has counted: the stock book says what is really in the yard. */
export const countMaterial = (
  context: UseCaseContext,
  id: string,
  counted: number,
): Promise<Outcome<Changed<{ name: string; before: number }>>> =>
  changing(
    context,
    {
      kind: 'counted',
      words: ({ name, before }) => `${name} counted: ${figure(counted)} in the yard, not ${figure(before)}`,
    },
    async (tx) => {
      const material = await materialById(tx, id);
      if (!material) return refuse('material', 'That material is not in the stock book.');
      if (!(counted >= 0)) return refuse('counted', 'How much is there? Write 0 or a number above it.');
      if (counted === material.onHand) return refuse('counted', 'The stock book says so already. Nothing was changed.');
      await updateMaterial(tx, id, { onHand: counted });
      return done({ name: material.name, before: material.onHand });
    },
  );
