import type { KitShape } from '../../../shared/kit-size.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { KitMade } from '../../engine/kits/kit-by-size.ts';
import type { LaidPanel, Pin } from '../../engine/kits/lay-courses.ts';
import { SIDES } from '../../engine/kits/outline.ts';
import { shortLengthText } from '../../engine/units/length.ts';

/** What the sides of each shape are called, in the order in which one walks round it from the top left. */
const SIDE_NAMES: Readonly<Record<KitShape, readonly string[]>> = {
  row: ['Along it'],
  rectangle: ['Top', 'Right', 'Bottom', 'Left'],
  L: ['Top', 'Down to the inner corner', 'On from the inner corner', 'Right', 'Bottom', 'Left'],
};

const courseTitle = (numbers: readonly number[], courses: number): string => {
  if (courses === 1) return 'The course';
  if (numbers.length === courses) return 'Every course';
  if (numbers.length === 1) return `Course ${numbers[0]}`;
  return `Courses ${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;
};

/** A panel as it lies: its corner nearest to the start, its size, and the length that stands on it in the yard's units. */
export interface DrawnPanel extends Pick<LaidPanel, 'xMm' | 'yMm' | 'widthMm' | 'depthMm'> {
  text: string;
}

/** A side of a course: its panels in the order in which one walks round, and the step that leads outside. */
export interface DrawnSide {
  name: string;
  outwards: { x: number; y: number };
  panels: readonly DrawnPanel[];
}

/** Courses that are alike. */
interface DrawnCourse {
  title: string;
  sides: readonly DrawnSide[];
}

/** A kit from above. */
export interface KitDrawing {
  lengthMm: number;
  widthMm: number;
  lengthText: string;
  /** Null for a row, which is as wide as its panels are thick. */
  widthText: string | null;
  thicknessMm: number;
  /** The word for the unit of the figures without one. */
  unit: string;
  courses: readonly DrawnCourse[];
  pins: readonly Pick<Pin, 'xMm' | 'yMm'>[];
}

/** Which way is outside of a side, across the plan. */
const outwards = (shape: KitShape, index: number): DrawnSide['outwards'] => {
  const { axis, forwards } = SIDES[shape][index]!;
  return axis === 'x' ? { x: 0, y: forwards ? -1 : 1 } : { x: forwards ? 1 : -1, y: 0 };
};

/**
 * A kit from above, ready to be drawn: in mm, with the words that stand on it. One drawing for all courses that are alike.
 * Panels of a side are in the order in which one walks round.
 */
export const kitDrawing = (
  { size, courses, pins }: KitMade,
  shape: KitShape,
  thicknessMm: number,
  system: UnitSystem,
): KitDrawing => {
  const count = courses.reduce((sum, { numbers }) => sum + numbers.length, 0);
  return {
    lengthMm: size.lengthMm,
    widthMm: shape === 'row' ? thicknessMm : size.widthMm,
    lengthText: shortLengthText(size.lengthMm, system),
    widthText: shape === 'row' ? null : shortLengthText(size.widthMm, system),
    thicknessMm,
    unit: system === 'metric' ? 'millimetres' : 'inches',
    courses: courses.map(({ numbers, panels }) => ({
      title: courseTitle(numbers, count),
      sides: SIDE_NAMES[shape].map((name, index) => ({
        name,
        outwards: outwards(shape, index),
        panels: panels
          .filter(({ side }) => side === index)
          .map(({ panelMm, side: _side, ...place }) => ({ ...place, text: shortLengthText(panelMm, system) })),
      })),
    })),
    pins: pins.map(({ xMm, yMm }) => ({ xMm, yMm })),
  };
};
