import type { KitSize } from '../../../shared/kit-size.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { KitBySize } from '../../engine/kits/kit-by-size.ts';
import { type PlanSize, sizeBetween } from '../../engine/kits/outline.ts';
import { lengthText } from '../../engine/units/length.ts';
import { planText } from './kit-facts.ts';
import { askedPlan } from './kit-laid.ts';
import type { NearSize } from './kit-model.ts';

const SIZES = [
  { mm: 'lengthMm', field: 'length', of: '', more: 'longer', less: 'shorter' },
  { mm: 'widthMm', field: 'width', of: '', more: 'wider', less: 'narrower' },
  { mm: 'cutLengthMm', field: 'cutLength', of: 'the corner ', more: 'longer', less: 'shorter' },
  { mm: 'cutWidthMm', field: 'cutWidth', of: 'the corner ', more: 'wider', less: 'narrower' },
] as const;

/** Smaller differences are none. */
const NOTHING_MM = 0.05;

/** "60 mm shorter, 40 mm wider" */
const differenceText = (size: PlanSize, asked: PlanSize, system: UnitSystem): string =>
  SIZES.flatMap(({ mm, of, more, less }) => {
    const by = size[mm] - asked[mm];
    return Math.abs(by) < NOTHING_MM ? [] : [`${of}${lengthText(Math.abs(by), system)} ${by > 0 ? more : less}`];
  }).join(', ');

/** Sizes that can be made, between the faces asked for, the smallest difference first, each with what to type for it. */
export const nearSizes = (
  { nearest }: KitBySize,
  size: KitSize,
  thicknessMm: number,
  system: UnitSystem,
): NearSize[] => {
  const asked = askedPlan(size);
  return nearest.map((one) => {
    const near = sizeBetween(one.size, size.faces, size.shape, thicknessMm);
    const fields = SIZES.filter(({ field }) => size[field] !== undefined);
    return {
      text: planText(near, size.shape, system),
      difference: differenceText(near, asked, system),
      typed: Object.fromEntries(fields.map(({ mm, field }) => [field, lengthText(near[mm], system)])),
    };
  });
};
