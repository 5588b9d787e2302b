import type { PlanSheet } from '../../../../shared/plan.ts';
import { cutsOfSheet } from './cuts-of-sheet.ts';
import type { Rect } from './layout.ts';
import type { SheetPlan } from './mesh-plan.ts';
import type { Size } from './openings.ts';

/** What sheets a plan cuts are of, and what a piece of a size is for where it is cut for a batch. */
interface Drawing {
  sheet: Size;
  meshMm: number;
  forOf(sheet: PlanSheet, piece: Size): string;
}

type Piece = SheetPlan['pieces'][number];

/** A sheet or rest as it is cut so far. */
interface Drawn {
  size: Size;
  isWhole: boolean;
  pieces: Piece[];
  kept: Rect[];
}

const isOf = (rest: Size, { widthMm, lengthMm }: Size): boolean =>
  rest.widthMm === widthMm && rest.lengthMm === lengthMm;

/** As it is cut out of what lies so far from the corner: whole openings. */
const pieceAt = (
  { xMm, yMm, widthMm, lengthMm, ...lies }: PlanSheet['pieces'][number],
  at: Pick<Rect, 'xMm' | 'yMm'>,
  meshMm: number,
): Omit<Piece, 'for'> => {
  const isTurned = lies.isTurned === true;
  const trimTo = isTurned ? { widthMm: lengthMm, lengthMm: widthMm } : { widthMm, lengthMm };
  const whole = (mm: number) => Number((Math.ceil((mm - 1e-6) / meshMm) * meshMm).toFixed(6));
  return {
    ...{ xMm: xMm + at.xMm, yMm: yMm + at.yMm, trimTo, isTurned },
    ...{ widthMm: whole(trimTo.widthMm), lengthMm: whole(trimTo.lengthMm) },
  };
};

/**
 * Sheets that a plan cuts for some batches, in the order of its list, each with all that is cut from it: a rest that one batch
 * leaves and another goes on with is drawn where it lies.
 *
 * Example: a sheet cut for B1 that keeps 600 by 900, and that rest cut for B2: one sheet with the pieces of both.
 */
export const sheetsDrawn = (sheets: readonly PlanSheet[], { sheet: full, meshMm, forOf }: Drawing): SheetPlan[] => {
  const all: Drawn[] = [];
  for (const sheet of sheets) {
    const { rest } = sheet;
    const before = rest && all.find(({ kept }) => kept.some((one) => isOf(one, rest)));
    const from = before?.kept.find((one) => isOf(one, rest!));
    const at = from ?? { xMm: 0, yMm: 0 };
    const drawn = before ?? { size: rest ?? full, isWhole: rest === undefined, pieces: [], kept: [] };
    if (!before) all.push(drawn);
    drawn.pieces.push(...sheet.pieces.map((one) => ({ ...pieceAt(one, at, meshMm), for: forOf(sheet, one) })));
    drawn.kept = [
      ...drawn.kept.filter((one) => one !== from),
      ...sheet.kept.map((one) => ({ ...one, xMm: one.xMm + at.xMm, yMm: one.yMm + at.yMm })),
    ];
  }
  return all.map(({ size, isWhole, pieces, kept }, place) => ({
    size,
    ...(isWhole ? {} : { rest: place }),
    cuts: cutsOfSheet({ xMm: 0, yMm: 0, ...size }, [...pieces, ...kept]),
    ...{ pieces, kept },
  }));
};
