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

/** So little is none. */
const EPSILON = 1e-9;

/**
 * The bags of a material one by one, as they are counted: what is opened, then by date, then those of no known date. None where no bag has a
 * date or is opened: then one number says all. `bags` are in the material's unit.
 */
export const bagsToCount = (material: Material, bags: readonly BagsFacts[], perUnit: number): BagsToCount[] => {
  if (bags.length === 0) return [];
  const undated = undatedIn(material);
  const known = bags.map(({ quantity, useBy, openedAt }) => ({ there: quantity * perUnit, useBy, openedAt }));
  return undated > EPSILON ? [...known, { there: undated * perUnit, useBy: null, openedAt: null }] : known;
};
