import type { Material } from '../../../shared/material.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { OFFCUTS_EXAMPLE, offcutsText } from './offcuts-typed.ts';
import { SIZES_EXAMPLE, sizesText } from './sizes-typed.ts';

/** What is left of opened ones as a field shows it, what it is called, and how it may be typed. */
export interface LeftField {
  called: 'Offcuts' | 'Rests';
  field: string;
  example: string;
}

/** Of what is cut up its field of offcuts, or of rests of sheets; null of anything else. */
export const leftField = (
  { stickMm, inSheets, offcuts = [], rests = [] }: Pick<Material, 'stickMm' | 'inSheets' | 'offcuts' | 'rests'>,
  system: UnitSystem,
): LeftField | null => {
  if (inSheets) return { called: 'Rests', field: sizesText(rests, system), example: SIZES_EXAMPLE[system] };
  if (stickMm === undefined) return null;
  return { called: 'Offcuts', field: offcutsText(offcuts, system), example: OFFCUTS_EXAMPLE[system] };
};
