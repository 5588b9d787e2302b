import type { Material } from '../../../shared/material.ts';
import type { MaterialUse } from './material-uses.ts';

const TOLERANCE = 1e-9;

/** What is always kept of a material. Nothing is kept of one that can't be bought: keeping it would waste it. */
export const keptOf = ({ minimum, leadDays }: Material): number => (leadDays === undefined ? 0 : minimum);

/** What is in the yard of a material, in the unit it is kept in. */
interface StockCounted {
  /** Of lengths that are cut, whole ones. */
  inYard: number;
  /** Beside the whole lengths there is a piece of one. */
  offcut: boolean;
  spokenFor: number;
  /** What nothing in the plan will use, with what is always kept. */
  spare: number;
}

/** How much of what is in the yard the plan will use, and how much is left over (with what is always kept). */
export const stockFacts = (material: Material, uses: readonly MaterialUse[]): StockCounted => {
  const wanted = uses.reduce((sum, { quantity }) => sum + quantity, 0);
  // Of lengths that are cut only whole ones count; what is left of an opened one is an offcut.
  const whole = material.stickMm === undefined ? material.onHand : Math.floor(material.onHand + TOLERANCE);
  const spokenFor = Math.min(Math.max(0, whole - keptOf(material)), wanted);
  return { inYard: whole, offcut: material.onHand - whole > TOLERANCE, spokenFor, spare: whole - spokenFor };
};
