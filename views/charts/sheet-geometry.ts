import type { SheetFacts } from '../../src/usecases/today/mesh-list.ts';

/** Sizes of a drawing in its own units, which are pixels on a screen that shows it at its full size. */
export interface SheetSizes {
  /** At most so wide and so high. */
  width: number;
  height: number;
  /** Width of one figure on average, the height of a line of them, and between figures and what is beside them. */
  figure: number;
  line: number;
  gap: number;
}

interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** A sheet drawn to scale, from above; of a long rest at its end only the beginning. */
export interface SheetGeometry {
  width: number;
  height: number;
  /** Not all of its length is drawn. */
  isCropped: boolean;
  pieces: Box[];
  rests: Box[];
  cuts: { number: number; x1: number; y1: number; x2: number; y2: number }[];
  /** Figures in the middle of pieces and rests, turned by a quarter where they only fit so; without room there are none. */
  texts: { x: number; y: number; text: string; upright: boolean }[];
}

/** Of a long rest as much is drawn as a quarter of the sheet's width. */
const REST_SHOWN = 0.25;

/** How much of the length has something in it, and a bit of what is kept below. */
const shownLength = ({ widthMm, lengthMm, parts, cuts }: SheetFacts): number => {
  const used = Math.max(
    0,
    ...parts.map(({ yMm, lengthMm: long }) => yMm + long),
    ...cuts.map(({ yMm, lengthMm: long, way }) => (way === 'across' ? yMm : Math.min(yMm + long, usedBy(parts)))),
  );
  return Math.min(lengthMm, used + widthMm * REST_SHOWN);
};

const usedBy = (parts: SheetFacts['parts']): number => Math.max(0, ...parts.map((one) => one.yMm + one.lengthMm));

const middle = (box: Box, text: string, { figure, line, gap }: SheetSizes): SheetGeometry['texts'] => {
  const room = text.length * figure + gap;
  const at = { x: box.x + box.width / 2, y: box.y + box.height / 2, text };
  if (room <= box.width && line <= box.height) return [{ ...at, upright: false }];
  return room <= box.height && line <= box.width ? [{ ...at, upright: true }] : [];
};

/**
 * Where everything lies on a sheet that is drawn to scale: its pieces as cut, what is kept, the cuts with their numbers.
 *
 * Example: a sheet of 1000 by 2000 in a drawing of 300 by 300, all of it used: the scale is 0.15.
 */
export const sheetGeometry = (sheet: SheetFacts, sizes: SheetSizes): SheetGeometry => {
  const shownMm = shownLength(sheet);
  const scale = Math.min(sizes.width / sheet.widthMm, sizes.height / shownMm);
  const height = shownMm * scale;
  const box = ({ xMm, yMm, widthMm, lengthMm }: SheetFacts['parts'][number]): Box => ({
    ...{ x: xMm * scale, y: yMm * scale, width: widthMm * scale },
    height: Math.min(lengthMm, shownMm - yMm) * scale,
  });
  const isSeen = ({ yMm }: { yMm: number }) => yMm < shownMm;
  const [parts, rests] = [sheet.parts.filter(isSeen), sheet.rests.filter(isSeen)];
  return {
    ...{ width: sheet.widthMm * scale, height, isCropped: shownMm < sheet.lengthMm },
    pieces: parts.map(box),
    rests: rests.map(box),
    cuts: sheet.cuts.filter(isSeen).map(({ number, way, xMm, yMm, lengthMm }) => {
      const [x1, y1] = [xMm * scale, yMm * scale];
      const end = way === 'across' ? { x2: x1 + lengthMm * scale, y2: y1 } : { x2: x1, y2: y1 + lengthMm * scale };
      return { number, x1, y1, x2: end.x2, y2: Math.min(end.y2, height) };
    }),
    texts: [
      ...parts.flatMap((part) => middle(box(part), part.text, sizes)),
      ...rests.flatMap((rest) => middle(box(rest), `keep ${rest.text}`, sizes)),
    ],
  };
};
