import type { KitShape } from '../../../shared/kit-size.ts';
import { type Chosen, choosePanels } from './choose-panels.ts';
import { allTurns } from './corners.ts';
import { type LaidPanel, layCourse, layPins, type Pin } from './lay-courses.ts';
import { type NanoSize, nearestSizes } from './nearest-sizes.ts';
import { type PlanSize, SIDES } from './outline.ts';
import { mmOfNano, nanoOf, runsNeeded } from './runs.ts';

/** A size by its outside, and the panels there are for it: all of one height and thickness, each length once. */
export interface SizeAsked {
  shape: KitShape;
  size: PlanSize;
  courses: number;
  thicknessMm: number;
  /** Longer than the panels are thick. */
  panelsMm: readonly number[];
}

/** A kit as it will be built. Lengths in mm; courses are numbered from 1, the lowest. */
export interface KitMade {
  /** As it comes out: within the tolerance of what was asked for. */
  size: PlanSize;
  /** The first course, and the second where there is one that differs; all further ones are like one of them. */
  courses: { numbers: number[]; panels: LaidPanel[] }[];
  /** How many of each length in all courses, the longest first. */
  pieces: { panelMm: number; count: number }[];
  pins: Pin[];
  /** No other choice has as few panels and fewer different lengths; false when that could not be settled. */
  proven: boolean;
}

/** A kit of the size asked for, or null and the sizes near it that can be made, five at most. */
export interface KitBySize {
  made: KitMade | null;
  /** Sizes that can be made, the one nearest to what was asked for first. */
  nearest: { size: PlanSize; differenceMm: number }[];
}

/** Panels are made to about this; a size that differs by no more is the size asked for. Common practice, no source. */
const TOLERANCE_MM = 1;
const NEAREST_SHOWN = 5;
const MOST_STEPS = 3_000_000;

const nanoSize = ({ lengthMm, widthMm, cutLengthMm, cutWidthMm }: PlanSize): NanoSize => ({
  x: { whole: nanoOf(lengthMm), cut: nanoOf(cutLengthMm) },
  y: { whole: nanoOf(widthMm), cut: nanoOf(cutWidthMm) },
});

const planSize = ({ x, y }: NanoSize): PlanSize => ({
  ...{ lengthMm: mmOfNano(x.whole), widthMm: mmOfNano(y.whole) },
  ...{ cutLengthMm: mmOfNano(x.cut), cutWidthMm: mmOfNano(y.cut) },
});

const isWithin = (one: NanoSize, other: NanoSize, nano: number): boolean =>
  (['x', 'y'] as const).every(
    (axis) =>
      Math.abs(one[axis].whole - other[axis].whole) <= nano && Math.abs(one[axis].cut - other[axis].cut) <= nano,
  );

/** Every other course, from the first or the second on. */
const courseNumbers = (from: 1 | 2, courses: number): number[] => {
  const numbers: number[] = [];
  for (let number: number = from; number <= courses; number += 2) numbers.push(number);
  return numbers;
};

const counted = (courses: KitMade['courses']): KitMade['pieces'] => {
  const counts = new Map<number, number>();
  for (const { numbers, panels } of courses)
    for (const { panelMm } of panels) counts.set(panelMm, (counts.get(panelMm) ?? 0) + numbers.length);
  return [...counts].map(([panelMm, count]) => ({ panelMm, count })).sort((a, b) => b.panelMm - a.panelMm);
};

const laidKit = ({ shape, courses, thicknessMm }: SizeAsked, size: NanoSize, chosen: Chosen): KitMade => {
  const layout = { sides: SIDES[shape], size: planSize(size), thicknessMm, ...chosen };
  const different = shape === 'row' || courses === 1 ? ([0] as const) : ([0, 1] as const);
  const laid = different.map((parity) => ({
    numbers:
      different.length === 1
        ? Array.from({ length: courses }, (_, index) => index + 1)
        : courseNumbers(parity === 0 ? 1 : 2, courses),
    panels: layCourse(layout, parity),
  }));
  return {
    size: layout.size,
    courses: laid,
    pieces: counted(laid),
    pins: layPins(layout, courses),
    proven: chosen.proven,
  };
};

/**
 * Which panels make a kit of a size, course by course, and where its pins stand; or the nearest sizes that can be made.
 * Of all ways to make it those with the fewest panels, and of these one with the fewest different lengths. Pure counting:
 * same input, same kit. Throws when a panel is no longer than the panels are thick, or there is none.
 *
 * Example: 1240 by 640 outside, two courses, panels 40 thick of 1200 and 600: four of each, four pins, one at each corner.
 */
export const kitBySize = (asked: SizeAsked, mostSteps = MOST_STEPS): KitBySize => {
  const { shape, courses, thicknessMm, panelsMm } = asked;
  if (panelsMm.length === 0 || panelsMm.some((panelMm) => panelMm <= thicknessMm))
    throw new Error('A kit needs panels that are longer than they are thick.');
  const sides = SIDES[shape];
  const [wanted, lengths, thickness] = [nanoSize(asked.size), [...new Set(panelsMm.map(nanoOf))], nanoOf(thicknessMm)];
  const near = nearestSizes(sides, wanted, lengths, thickness, courses, NEAREST_SHOWN);
  const nearest = near.map(({ size, differenceNano }) => ({
    size: planSize(size),
    differenceMm: mmOfNano(differenceNano),
  }));
  const size = near[0]?.size;
  if (!size || !isWithin(size, wanted, nanoOf(TOLERANCE_MM))) return { made: null, nearest };
  const turns = allTurns(shape === 'row' ? 0 : sides.length);
  const ways = turns.map((turn) => ({ turns: turn, needs: runsNeeded(sides, turn, size, thickness, courses) }));
  const chosen = choosePanels(ways, lengths, { steps: 0, most: mostSteps });
  if (!chosen) throw new Error('A size that can be made could not be made.');
  return { made: laidKit(asked, size, chosen), nearest };
};
