import { undatedIn } from '../../../shared/bags.ts';
import type { Material } from '../../../shared/material.ts';
import type { BagsFacts } from './bags-facts.ts';

/** Bags of one date to be counted: how many the book has, in the unit that is shown; both null for those of no known date. */
export interface BagsToCount {
  there: number;
  /** The date on them. */
  useBy: string | null;
  /** When they were opened, in the yard's zone. */
  openedAt: string | null;
}

/**
 * The bags of a material one by one, as they are counted: what is opened, then by date, then those of no known date, also where the book has
 * none such: some may be found. None where no bag has a date or is opened: then one number says all. `bags` are in the material's unit.
 */
export const bagsToCount = (material: Material, bags: readonly BagsFacts[], perUnit: number): BagsToCount[] => {
  if (bags.length === 0) return [];
  const known = bags.map(({ quantity, useBy, openedAt }) => ({ there: quantity * perUnit, useBy, openedAt }));
  return [...known, { there: undatedIn(material) * perUnit, useBy: null, openedAt: null }];
};
