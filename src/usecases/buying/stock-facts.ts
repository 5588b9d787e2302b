import type { Material } from '../../../shared/material.ts';
import { countedOnHand } from '../../engine/cut/offcuts.ts';
import type { MaterialUse } from './material-uses.ts';

/** What is always kept of a material. Nothing is kept of one that can't be bought: keeping it would waste it. */
export const keptOf = ({ minimum, leadDays }: Material): number => (leadDays === undefined ? 0 : minimum);

/** What is in the yard of a material, in the unit it is kept in. */
interface StockCounted {
  /** Of lengths that are cut, whole ones. */
  inYard: number;
  spokenFor: number;
  /** What nothing in the plan will use, with what is always kept. */
  spare: number;
}

/** How much of what is in the yard the plan will use (none of what is `past` its date), and how much is left over (with what is always kept). */
export const stockFacts = (material: Material, uses: readonly MaterialUse[], past = 0): StockCounted => {
  const wanted = uses.reduce((sum, { quantity }) => sum + quantity, 0);
  const whole = countedOnHand(material);
  const spokenFor = Math.min(Math.max(0, whole - past - keptOf(material)), wanted);
  return { inYard: whole, spokenFor, spare: whole - spokenFor };
};
