/** Lengths are typed with a fraction of a millimetre at most: so little more or less is the same wire. */
const TOLERANCE_MM = 1e-6;

/** How far apart the wires of a mesh are, mm: those met going across its width, and those met going along its length. */
export interface WireGrid {
  acrossMm: number;
  alongMm: number;
}

/** A size in mm; of a sheet or a rest as it lies, across by along. */
export interface Size {
  widthMm: number;
  lengthMm: number;
}

/** A size in whole openings of a mesh. */
export interface Openings {
  across: number;
  along: number;
}

/** A cut runs close beside a wire, so a piece takes whole openings: the fewest that are no shorter than it has to be. */
const openingsFor = (mm: number, gridMm: number): number => Math.max(1, Math.ceil((mm - TOLERANCE_MM) / gridMm));

/** Whole openings that there are on a length; a part of one at the edge is of no use. */
const openingsOn = (mm: number, gridMm: number): number => Math.floor((mm + TOLERANCE_MM) / gridMm);

/**
 * The whole openings that a piece takes: never less than it is to measure, for its wire has to reach that far; the ends
 * that stick out over it, less than one opening each way, are trimmed. Turned, its width lies along the sheet.
 *
 * Example: 180 by 890 of a mesh of 50 takes 4 by 18 openings, cut as 200 by 900. Of exactly 200 it takes 4.
 */
export const openingsOfPiece = (piece: Size, grid: WireGrid, isTurned = false): Openings => {
  const [across, along] = isTurned ? [piece.lengthMm, piece.widthMm] : [piece.widthMm, piece.lengthMm];
  return { across: openingsFor(across, grid.acrossMm), along: openingsFor(along, grid.alongMm) };
};

/**
 * The whole openings that a sheet or a rest has.
 *
 * Example: a sheet of 1220 by 2440 of a mesh of 50 has 24 by 48: 20 mm and 40 mm are over.
 */
export const openingsOfSheet = (sheet: Size, grid: WireGrid): Openings => ({
  across: openingsOn(sheet.widthMm, grid.acrossMm),
  along: openingsOn(sheet.lengthMm, grid.alongMm),
});
