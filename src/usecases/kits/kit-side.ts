import type { UnitSystem } from '../../../shared/units.ts';
import type { KitMade } from '../../engine/kits/kit-by-size.ts';
import type { LaidPanel } from '../../engine/kits/lay-courses.ts';
import { shortLengthText } from '../../engine/units/length.ts';

/** A panel as one stands before it. Of one that runs back only the end is seen, and no length stands on it. */
interface SidePanel {
  xMm: number;
  widthMm: number;
  text: string | null;
}

/** A kit from the side, as one stands before the longest straight side of it; courses from the ground up. */
export interface KitSide {
  lengthMm: number;
  /** Of one course. */
  courseMm: number;
  /** How deep pins go into the ground. */
  groundMm: number;
  heightText: string;
  groundText: string;
  courses: readonly (readonly SidePanel[])[];
  /** How far from the left each pin stands. */
  pinsMm: readonly number[];
}

/** What of a kit's size is seen from the side. */
interface SideSizes {
  thicknessMm: number;
  heightMm: number;
  courses: number;
  groundMm: number;
}

/** Panels are laid to about this. */
const SAME_MM = 0.01;

const nearestOf = (panels: readonly LaidPanel[]): number => Math.max(...panels.map((one) => one.yMm + one.depthMm));

const seen = (panels: readonly LaidPanel[], nearest: number, system: UnitSystem): SidePanel[] =>
  panels
    .filter((one) => one.yMm + one.depthMm > nearest - SAME_MM)
    .map(({ xMm, widthMm, depthMm, panelMm }) => ({
      ...{ xMm, widthMm, text: widthMm > depthMm ? shortLengthText(panelMm, system) : null },
    }))
    .sort((a, b) => a.xMm - b.xMm);

/** A kit from the side, ready to be drawn: in mm, with the words that stand on it. The side nearest to whoever looks is the lower one of the plan. */
export const kitSide = (
  { size, courses, pins }: KitMade,
  { thicknessMm, heightMm, courses: count, groundMm }: SideSizes,
  system: UnitSystem,
): KitSide => {
  const nearest = nearestOf(courses.flatMap(({ panels }) => panels));
  const inSight = pins.filter(({ yMm }) => yMm > nearest - thicknessMm).map(({ xMm }) => xMm);
  return {
    ...{ lengthMm: size.lengthMm, courseMm: heightMm, groundMm },
    heightText: shortLengthText(count * heightMm, system),
    groundText: shortLengthText(groundMm, system),
    courses: Array.from({ length: count }, (_, index) => {
      const laid = courses.find(({ numbers }) => numbers.includes(index + 1));
      return seen(laid?.panels ?? [], nearest, system);
    }),
    pinsMm: inSight.sort((a, b) => a - b),
  };
};
