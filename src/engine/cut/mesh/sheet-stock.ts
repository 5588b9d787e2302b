import type { Casting } from '../../../../shared/casting.ts';
import type { Material, SheetCut } from '../../../../shared/material.ts';
import { areaOf } from './block.ts';
import { type Spot, type Way, type WorthOf, worthTo } from './cut-in-rows.ts';
import { type Openings, openingsOfPiece, openingsOfSheet, type Size } from './openings.ts';

/** A piece that is cut from sheets, with the ways it may lie. */
export interface SheetPiece extends Size {
  ways: readonly Way[];
}

/** So many of them. */
export interface SomePieces {
  piece: SheetPiece;
  count: number;
}

const mm2 = ({ widthMm, lengthMm }: Size): number => widthMm * lengthMm;

/** The same piece for several moulds of a batch is cut together, the largest first. */
export const inOrderOfCutting = (pieces: readonly SomePieces[]): SomePieces[] => {
  const counts = new Map<SheetPiece, number>();
  for (const { piece, count } of pieces) counts.set(piece, (counts.get(piece) ?? 0) + count);
  return [...counts]
    .map(([piece, count]) => ({ piece, count }))
    .sort(({ piece: a }, { piece: b }) => mm2(b) - mm2(a) || b.lengthMm - a.lengthMm || a.ways.length - b.ways.length);
};

/** A sheet or a rest of it, mm, and the whole openings that it has. */
export interface Laid extends Openings {
  size: Size;
}

/** What pieces are cut from: sheets of one size, and rests that are on hand, the largest first. */
export interface SheetStock {
  meshMm: number;
  sheet: Laid;
  rests: readonly Laid[];
  worthOf: WorthOf;
  pieceOf(cut: SheetCut): SheetPiece;
}

/** Of one material; more than anybody keeps, and so that a slip of the hand costs no time. */
const MOST_RESTS = 200;
/** Sizes are kept to a millionth of a millimetre, so that sums of fractions give one size and not several. */
const DECIMALS = 6;

const inMm = (mm: number): number => Number(mm.toFixed(DECIMALS));

const laid = (size: Size, meshMm: number): Laid => ({
  ...openingsOfSheet(size, { acrossMm: meshMm, alongMm: meshMm }),
  size: { widthMm: size.widthMm, lengthMm: size.lengthMm },
});

const waysOf = (piece: SheetCut, meshMm: number): Way[] => {
  const grid = { acrossMm: meshMm, alongMm: meshMm };
  const asItIs = { ...openingsOfPiece(piece, grid), isTurned: false };
  const isSquare = asItIs.across === asItIs.along;
  return piece.mayTurn && !isSquare ? [asItIs, { ...openingsOfPiece(piece, grid, true), isTurned: true }] : [asItIs];
};

/** Pieces of one size are one, whatever they are for. */
const pieceFinder = (meshMm: number): ((cut: SheetCut) => SheetPiece) => {
  const known = new Map<string, SheetPiece>();
  return (cut) => {
    const { widthMm, lengthMm, mayTurn } = cut;
    const key = `${widthMm} ${lengthMm} ${mayTurn}`;
    const piece = known.get(key) ?? { widthMm, lengthMm, ways: waysOf(cut, meshMm) };
    known.set(key, piece);
    return piece;
  };
};

/**
 * A material in sheets as pieces are cut from it for castings; null of any other material. Rests of no use to any casting stay
 * where they are.
 */
export const sheetStockOf = (material: Material, castings: readonly Pick<Casting, 'sheets'>[]): SheetStock | null => {
  const { sheetWidthMm: widthMm, sheetLengthMm: lengthMm, meshMm = 1, rests = [], inSheets } = material;
  if (!inSheets || widthMm === undefined || lengthMm === undefined) return null;
  const pieceOf = pieceFinder(meshMm);
  const cuts = castings.flatMap(({ sheets = [] }) => sheets.filter((cut) => cut.material === material.id));
  const cutUp = new Set(cuts.filter(({ count }) => count > 0).map(pieceOf));
  const worthOf = worthTo([...cutUp].map(({ ways }) => ways));
  const there = rests
    .flatMap((rest) => new Array<Laid>(Math.min(rest.count, MOST_RESTS)).fill(laid(rest, meshMm)))
    .sort((a, b) => areaOf(b) - areaOf(a) || b.across - a.across);
  const sheet = laid({ widthMm, lengthMm }, meshMm);
  return { meshMm, sheet, rests: there.filter((rest) => worthOf(rest) > 0).slice(0, MOST_RESTS), worthOf, pieceOf };
};

/**
 * A part of a sheet in mm. At an outer edge it has what is there of an opening as well.
 *
 * Example: of a sheet of 1220 by 2440, mesh of 50, 8 by 48 openings at 16 are 420 by 2440 at 800.
 */
export const rectOf = ({ size, ...all }: Laid, { x, y, across, along }: Spot, meshMm: number) => ({
  widthMm: inMm(x + across === all.across ? size.widthMm - x * meshMm : across * meshMm),
  lengthMm: inMm(y + along === all.along ? size.lengthMm - y * meshMm : along * meshMm),
  xMm: inMm(x * meshMm),
  yMm: inMm(y * meshMm),
});
