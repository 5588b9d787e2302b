import type { Material } from '../../../shared/material.ts';
import { type StockClock, stockCourse } from '../../engine/buy/stock-course.ts';
import { countedOnHand } from '../../engine/cut/offcuts.ts';
import type { MaterialUse } from './material-uses.ts';

/** What is always kept of a material. Nothing is kept of one that can't be bought: keeping it would waste it. */
export const keptOf = ({ minimum, leadDays }: Material): number => (leadDays === undefined ? 0 : minimum);

/** What is in the yard of a material, in the unit it is kept in. */
export interface StockCounted {
  /** Of lengths that are cut, whole ones. */
  inYard: number;
  spokenFor: number;
  /** Past its date: nothing uses it. */
  past: number;
  /** Good now, and no more once something that is planned finds too little. */
  goesOff: number;
  /** What may still be used, and nothing in the plan will use. */
  spare: number;
}

/**
 * How much of what is in the yard the plan uses, and how much is left over, bag by bag as planning takes them (`stockCourse`).
 * What is always kept is spoken for as well where the plan comes to use it: more is bought before that is gone.
 */
export const stockFacts = (
  material: Material,
  uses: readonly MaterialUse[],
  past: number,
  clock: StockClock,
): StockCounted => {
  const inYard = countedOnHand(material);
  const course = stockCourse(material, uses, [], clock);
  const spokenFor = course.reduce((sum, step) => sum + (step.kind === 'used' ? step.quantity - step.short : 0), 0);
  const goesOff = course
    .slice(0, course.findLastIndex(({ short }) => short > 0) + 1)
    .reduce((sum, { kind, quantity }) => sum + (kind === 'past its date' ? quantity : 0), 0);
  return { inYard, spokenFor, past, goesOff, spare: Math.max(0, inYard - past - spokenFor - goesOff) };
};

/** The same in the unit that is shown. */
export const stockShown = (counted: StockCounted, perUnit: number): StockCounted => {
  const { inYard, spokenFor, past, goesOff, spare } = counted;
  return {
    ...{ inYard: inYard * perUnit, spokenFor: spokenFor * perUnit, past: past * perUnit },
    ...{ goesOff: goesOff * perUnit, spare: spare * perUnit },
  };
};
