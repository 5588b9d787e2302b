import type { KitSide } from '../../src/usecases/kits/kit-side.ts';

/** Sizes of the drawing in its own units, which are pixels on a screen that shows it at its full size. */
export interface SideSizes {
  /** At most so wide, with the height beside it, and so high from the top to the foot of the pins. */
  width: number;
  height: number;
  /** Height of a line of figures, the width of one figure on average, and what is left round both. */
  line: number;
  figure: number;
  gap: number;
}

interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

export interface SideGeometry {
  width: number;
  height: number;
  /** Drawn over real: so many units for a millimetre. */
  scale: number;
  groundY: number;
  panels: Box[];
  /** Of panels that run back. */
  ends: Box[];
  pins: { x: number; top: number; foot: number }[];
  texts: { x: number; y: number; text: string; upright: boolean }[];
}

/**
 * Where everything goes on a kit from the side, drawn to scale: courses on the ground, lengths on panels that have room for them,
 * the height beside it and the depth of the pins below.
 *
 * Example: 1000 long, two courses of 200 and pins 100 deep, in 230 wide with 15 for the height on either side: the scale is
 * 200 / 1000 = 0.2, the ground is 80 below the top.
 */
export const sideGeometry = (side: KitSide, sizes: SideSizes): SideGeometry => {
  const edge = sizes.line + sizes.gap;
  const tallMm = side.courses.length * side.courseMm;
  const scale = Math.min((sizes.width - 2 * edge) / side.lengthMm, sizes.height / (tallMm + side.groundMm));
  const groundY = sizes.gap + tallMm * scale;
  const course = side.courseMm * scale;
  const placed = side.courses.flatMap((panels, index) =>
    panels.map((panel) => ({
      text: panel.text,
      box: {
        ...{ x: edge + panel.xMm * scale, y: groundY - (index + 1) * course, width: panel.widthMm * scale },
        height: course,
      },
    })),
  );
  const fits = (text: string, { width, height }: Box) =>
    text.length * sizes.figure + sizes.gap <= width && sizes.line <= height;
  const foot = groundY + side.groundMm * scale;
  return {
    width: side.lengthMm * scale + 2 * edge,
    height: foot + sizes.gap,
    ...{ scale, groundY },
    panels: placed.filter(({ text }) => text !== null).map(({ box }) => box),
    ends: placed.filter(({ text }) => text === null).map(({ box }) => box),
    pins: side.pinsMm.map((mm) => ({ x: edge + mm * scale, top: sizes.gap, foot })),
    texts: [
      { x: edge / 2, y: sizes.gap + (tallMm * scale) / 2, text: side.heightText, upright: true },
      ...placed.flatMap(({ text, box }) =>
        text !== null && fits(text, box)
          ? [{ x: box.x + box.width / 2, y: box.y + box.height / 2, text, upright: false }]
          : [],
      ),
    ],
  };
};
