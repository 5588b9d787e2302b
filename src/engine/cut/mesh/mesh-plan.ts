import { fits } from './block.ts';
import { byFilling } from './by-filling.ts';
import { EFFORTS, type MeshEffort } from './effort.ts';
import { fewestExact, type Stock } from './fewest-exact.ts';
import { isUsable } from './largest-rest.ts';
import { layOut, type Rect, type SheetCutLine } from './layout.ts';
import { dealer, kindsOf, type MeshPiece } from './mesh-kinds.ts';
import { openingsOfSheet, type Size, type WireGrid } from './openings.ts';
import { smallestBlocks } from './smallest-blocks.ts';

/** What is cut: whole sheets (or rolls) of one size, and rests of opened ones on hand; a rest is kept from `usable` on. */
export interface MeshMaterial {
  sheet: Size;
  grid: WireGrid;
  rests: readonly Size[];
  usable: Size;
}

/** A sheet, or a rest that was on hand, with its cuts in order, its pieces, and what is left of it. */
export interface SheetPlan {
  size: Size;
  /** Which of the rests on hand; a whole sheet has none. */
  rest?: number;
  cuts: SheetCutLine[];
  /** As cut, whole openings; `trimTo` is what it is trimmed to, as it lies. */
  pieces: (Rect & { trimTo: Size; isTurned: boolean; for: string })[];
  kept: Rect[];
}

/** A cut plan of mesh: how many whole sheets it takes, and how many nobody could do without. */
export interface MeshPlan {
  sheets: SheetPlan[];
  whole: number;
  atLeast: number;
  /** Nothing takes fewer sheets, and nothing throws less of as many away. */
  isProven: boolean;
}

/** A plan, or the pieces that go on no sheet. */
export type MeshAnswer = { is: 'plan'; plan: MeshPlan } | { is: 'too large'; pieces: MeshPiece[] };

/**
 * Which sheet every piece of mesh comes from: as few whole sheets as it can, and of those ways one that throws little away,
 * rests on hand used and the largest usable rest kept in one piece. All cuts run from edge to edge, close beside a wire; a piece takes
 * whole openings and is trimmed. Few pieces are looked through whole and the answer is proven; of many, a good
 * one is found, and `atLeast` says how many sheets nobody could do without. A roll is a sheet of its width and length.
 *
 * Example: sheets of 1200 by 2400, mesh of 50, six pieces of 180 by 890 that may turn: one sheet, and 1200 by 1200 is kept.
 */
export const meshPlan = (
  material: MeshMaterial,
  pieces: readonly MeshPiece[],
  effort: MeshEffort = 'usual',
): MeshAnswer => {
  const { grid } = material;
  const wanted = pieces.filter((x) => x.count > 0);
  const stock: Stock = {
    sheet: openingsOfSheet(material.sheet, grid),
    rests: material.rests.map((rest) => openingsOfSheet(rest, grid)),
    usable: openingsOfSheet(material.usable, grid),
  };
  const { kinds, pieces: ofKind } = kindsOf(wanted, grid);
  const tooLarge = kinds.flatMap(({ ways }, i) => (ways.some(({ size }) => fits(size, stock.sheet)) ? [] : ofKind[i]!));
  if (tooLarge.length > 0) return { is: 'too large', pieces: tooLarge };
  const small = smallestBlocks(kinds, [stock.sheet, ...stock.rests], EFFORTS[effort]);
  const exact = small && wanted.length > 0 ? fewestExact(small, stock, EFFORTS[effort]) : null;
  const cutting = exact ? { ...exact, atLeast: exact.sheets } : byFilling(kinds, stock, effort);
  const next = dealer(ofKind);
  const sheets = cutting.used.map(({ rest, part }): SheetPlan => {
    const layout = layOut(part, rest === undefined ? stock.sheet : stock.rests[rest]!, grid);
    return {
      size: rest === undefined ? material.sheet : material.rests[rest]!,
      ...(rest === undefined ? {} : { rest }),
      cuts: layout.cuts,
      pieces: layout.pieces.map(({ kind, isTurned, ...rect }) => {
        const { widthMm, lengthMm, for: to } = next(kind);
        const trimTo = isTurned ? { widthMm: lengthMm, lengthMm: widthMm } : { widthMm, lengthMm };
        return { ...rect, trimTo, isTurned, for: to };
      }),
      kept: layout.rests.filter((x) => isUsable(x.openings, stock.usable)).map(({ openings: _, ...rect }) => rect),
    };
  });
  return {
    is: 'plan',
    plan: { sheets, whole: cutting.sheets, atLeast: cutting.atLeast, isProven: cutting.isProven },
  };
};

const mm2 = ({ widthMm, lengthMm }: Size): number => widthMm * lengthMm;

/**
 * How much of what is opened is thrown away: neither a piece, as trimmed, nor kept as a rest; percent, 0 for nothing opened.
 *
 * Example: one sheet of 1200 by 2400 with pieces of 2 m² and a rest of 0.592 m²: 10.
 */
export const wastePercent = (sheets: readonly SheetPlan[]): number => {
  const sum = (of: (sheet: SheetPlan) => number): number => sheets.reduce((total, sheet) => total + of(sheet), 0);
  const opened = sum((x) => mm2(x.size));
  if (opened === 0) return 0;
  const used = sum((x) => x.pieces.reduce((area, piece) => area + mm2(piece.trimTo), 0));
  const kept = sum((x) => x.kept.reduce((area, rest) => area + mm2(rest), 0));
  return (100 * (opened - used - kept)) / opened;
};
