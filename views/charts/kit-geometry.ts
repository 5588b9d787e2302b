import type { DrawnPanel, DrawnSide, KitDrawing } from '../../src/usecases/kits/kit-drawing.ts';

/** Sizes of a drawing in its own units, which are pixels on a screen that shows it at its full size. */
export interface DrawingSizes {
  /** At most so wide and so high, with the figures round it. */
  width: number;
  height: number;
  /** Height of a line of figures, and the width of one figure on average. */
  line: number;
  figure: number;
  /** Between a panel and its figure, and between figures and the edge. */
  gap: number;
  /** Radius of a pin: a share of the thickness it stands in, within limits that can be seen. */
  pin: { share: number; least: number; most: number };
}

type PlanSide = Pick<DrawnSide, 'outwards' | 'panels'>;

/** One course of a drawing, with the pins of all. */
export interface PlanOf extends Pick<KitDrawing, 'lengthMm' | 'widthMm' | 'thicknessMm' | 'pins'> {
  sides: readonly PlanSide[];
}

interface PlacedText {
  x: number;
  y: number;
  text: string;
  /** Runs along a side that goes up or down the page: turned by a quarter. */
  upright: boolean;
}

export interface KitGeometry {
  width: number;
  height: number;
  /** Drawn over real: so many units for a millimetre. */
  scale: number;
  panels: { x: number; y: number; width: number; height: number }[];
  texts: PlacedText[];
  pins: { x: number; y: number }[];
  pinRadius: number;
}

/** Like lengths that follow one another as one: "2 × 900, 450". */
export const runText = (panels: readonly { text: string }[]): string => {
  const runs: { text: string; count: number }[] = [];
  for (const { text } of panels) {
    const last = runs.at(-1);
    if (last?.text === text) last.count++;
    else runs.push({ text, count: 1 });
  }
  return runs.map(({ text, count }) => (count === 1 ? text : `${count} × ${text}`)).join(', ');
};

const middleOf = (panels: readonly DrawnPanel[]) => {
  const left = Math.min(...panels.map(({ xMm }) => xMm));
  const right = Math.max(...panels.map(({ xMm, widthMm }) => xMm + widthMm));
  const top = Math.min(...panels.map(({ yMm }) => yMm));
  const bottom = Math.max(...panels.map(({ yMm, depthMm }) => yMm + depthMm));
  return { xMm: (left + right) / 2, yMm: (top + bottom) / 2, acrossMm: { x: right - left, y: bottom - top } };
};

/** A figure beside the middle of some panels, on their outside. */
const textBeside = (
  panels: readonly DrawnPanel[],
  text: string,
  { outwards }: PlanSide,
  scale: number,
  sizes: DrawingSizes,
): PlacedText => {
  const { xMm, yMm, acrossMm } = middleOf(panels);
  const away = (mm: number) => (mm * scale) / 2 + sizes.gap + sizes.line / 2;
  return {
    x: xMm * scale + outwards.x * away(acrossMm.x),
    y: yMm * scale + outwards.y * away(acrossMm.y),
    text,
    upright: outwards.x !== 0,
  };
};

/** Each panel's figure at its own place where all of a side have room for them, else one for the side. */
const textsOf = (side: PlanSide, scale: number, sizes: DrawingSizes): PlacedText[] => {
  const room = ({ widthMm, depthMm }: DrawnPanel) => Math.max(widthMm, depthMm) * scale;
  const fits = side.panels.every((panel) => panel.text.length * sizes.figure + sizes.gap <= room(panel));
  if (fits) return side.panels.map((panel) => textBeside([panel], panel.text, side, scale, sizes));
  return [textBeside(side.panels, runText(side.panels), side, scale, sizes)];
};

/**
 * Where everything goes on a plan of one course, drawn to scale: panels, the figure of each beside it on the outside, and
 * pins. As large as the sizes allow; figures go round it on every side, so nothing is drawn beyond its edges.
 *
 * Example: a kit of 1235 by 635 drawn 339 wide with 46 taken by figures on both sides: the scale is 247 / 1235 = 0.2.
 */
export const kitGeometry = (
  { lengthMm, widthMm, thicknessMm, sides, pins }: PlanOf,
  sizes: DrawingSizes,
): KitGeometry => {
  const edge = 2 * sizes.gap + sizes.line;
  const scale = Math.min((sizes.width - 2 * edge) / lengthMm, (sizes.height - 2 * edge) / widthMm);
  const at = (mm: number) => edge + mm * scale;
  return {
    width: lengthMm * scale + 2 * edge,
    height: widthMm * scale + 2 * edge,
    scale,
    panels: sides.flatMap(({ panels }) =>
      panels.map((panel) => ({
        ...{ x: at(panel.xMm), y: at(panel.yMm), width: panel.widthMm * scale, height: panel.depthMm * scale },
      })),
    ),
    texts: sides
      .flatMap((side) => textsOf(side, scale, sizes))
      .map((text) => ({ ...text, x: text.x + edge, y: text.y + edge })),
    pins: pins.map(({ xMm, yMm }) => ({ x: at(xMm), y: at(yMm) })),
    pinRadius: Math.min(sizes.pin.most, Math.max(sizes.pin.least, thicknessMm * scale * sizes.pin.share)),
  };
};
