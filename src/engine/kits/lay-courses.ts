import { type Parity, reachOf, type Turns } from './corners.ts';
import type { Run } from './fewest-panels.ts';
import { type PlanSize, type Side, sideLength } from './outline.ts';
import type { RunNeed } from './runs.ts';
import { mmOfNano } from './runs.ts';

/** One panel as it stands, seen from above, in mm. */
export interface LaidPanel {
  /** Which side of the kit it is part of, counted from 0. */
  side: number;
  panelMm: number;
  xMm: number;
  yMm: number;
  widthMm: number;
  depthMm: number;
}

/** Where a pin stands, seen from above, in mm from the outer corner at which the first side starts. */
export interface Pin {
  at: 'corner' | 'joint' | 'end';
  xMm: number;
  yMm: number;
}

/** A side as it lies: where it begins, which way it runs, and which way is inside. */
interface Laid {
  x: number;
  y: number;
  along: { x: number; y: number };
  inwards: { x: number; y: number };
  length: number;
}

/** Where each side lies, walking round from 0, 0 with the inside to the right. */
const layOutline = (sides: readonly Side[], size: PlanSize): Laid[] => {
  let [x, y] = [0, 0];
  return sides.map((side) => {
    const length =
      side.axis === 'x'
        ? sideLength(side, size.lengthMm, size.cutLengthMm)
        : sideLength(side, size.widthMm, size.cutWidthMm);
    const way = side.forwards ? 1 : -1;
    const along = side.axis === 'x' ? { x: way, y: 0 } : { x: 0, y: way };
    const laid = { x, y, along, inwards: { x: -along.y, y: along.x }, length };
    [x, y] = [x + along.x * length, y + along.y * length];
    return laid;
  });
};

/** A point so far along a side from its start, and so far inwards. */
const pointOn = ({ x, y, along, inwards }: Laid, far: number, deep: number) => ({
  xMm: x + along.x * far + inwards.x * deep,
  yMm: y + along.y * far + inwards.y * deep,
});

const panelOn = (laid: Laid, side: number, from: number, panelMm: number, thicknessMm: number): LaidPanel => {
  const [one, other] = [pointOn(laid, from, 0), pointOn(laid, from + panelMm, thicknessMm)];
  return {
    ...{ side, panelMm, xMm: Math.min(one.xMm, other.xMm), yMm: Math.min(one.yMm, other.yMm) },
    ...{ widthMm: Math.abs(one.xMm - other.xMm), depthMm: Math.abs(one.yMm - other.yMm) },
  };
};

/** What is laid: the shape, its outside size, how corners turn, and the run of each side. */
export interface Layout {
  sides: readonly Side[];
  size: PlanSize;
  thicknessMm: number;
  turns: Turns;
  needs: readonly RunNeed[];
  runs: readonly Run[];
}

const runIn = ({ needs, runs }: Layout, side: number, parity: Parity): number[] => {
  const { long, short } = runs[side]!;
  return (needs[side]!.longIn === parity ? long : short).map(mmOfNano);
};

/** Where the panels of a side begin and end in a course: 0 at the outer corner it starts from. */
const marksOf = (layout: Layout, side: number, parity: Parity): number[] => {
  const marks = [-reachOf(layout.sides, side, layout.turns, parity, layout.thicknessMm).start];
  for (const panelMm of runIn(layout, side, parity)) marks.push(marks.at(-1)! + panelMm);
  return marks;
};

/**
 * The panels of one course, side by side, from above, each where it stands in mm. Courses alternate: `parity` 0 is the
 * first, third and so on.
 */
export const layCourse = (layout: Layout, parity: Parity): LaidPanel[] => {
  const outline = layOutline(layout.sides, layout.size);
  return outline.flatMap((laid, side) => {
    const marks = marksOf(layout, side, parity);
    return runIn(layout, side, parity).map((panelMm, index) =>
      panelOn(laid, side, marks[index]!, panelMm, layout.thicknessMm),
    );
  });
};

/** In the middle of the square where two sides meet. */
const cornerPin = (laid: Laid, side: Side, thicknessMm: number): Pin => ({
  at: 'corner',
  ...pointOn(laid, side.start === 'outer' ? thicknessMm / 2 : -thicknessMm / 2, thicknessMm / 2),
});

/** Halfway between where the joint is in one course and in the next; both ends of it where it stays, or is the only one. */
const jointPins = (layout: Layout, laid: Laid, side: number, courses: number): Pin[] => {
  const half = layout.thicknessMm / 2;
  const [first, second] = [marksOf(layout, side, 0), marksOf(layout, side, 1)];
  return first.slice(1, -1).flatMap((mark, index) => {
    const other = courses === 1 ? mark : second[index + 1]!;
    const places = other === mark ? [mark - half, mark + half] : [(mark + other) / 2];
    return places.map((far): Pin => ({ at: 'joint', ...pointOn(laid, far, half) }));
  });
};

/**
 * Where the pins stand, each through a sleeve of one panel in every course: one at each corner; one at each joint of a
 * side with corners, two at each joint of a row or of a single course, where nothing else holds both ends; one at
 * either end of a row.
 *
 * Example: in a row of two panels of 900, 40 thick, they stand 20, 880, 920 and 1780 mm from its start.
 */
export const layPins = (layout: Layout, courses: number): Pin[] => {
  const outline = layOutline(layout.sides, layout.size);
  const half = layout.thicknessMm / 2;
  return outline.flatMap((laid, index) => {
    const side = layout.sides[index]!;
    const joints = jointPins(layout, laid, index, courses);
    if (side.start !== 'end') return [cornerPin(laid, side, layout.thicknessMm), ...joints];
    const ends = [half, laid.length - half].map((far): Pin => ({ at: 'end', ...pointOn(laid, far, half) }));
    return [ends[0]!, ...joints, ends[1]!];
  });
};
