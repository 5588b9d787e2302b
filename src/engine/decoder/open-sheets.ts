import { cutInRows } from '../cut/mesh/cut-in-rows.ts';
import type { Openings } from '../cut/mesh/openings.ts';
import { inOrderOfCutting, type SheetStock, type SomePieces } from '../cut/mesh/sheet-stock.ts';

/** So many pieces of a size that are cut from sheets of a material. */
export interface SheetCuts extends SomePieces {
  material: number;
}

/** A rest of a sheet, and from when on it is there to be cut. */
interface OpenRest extends Openings {
  from: number;
}

/** Rests of the sheets of one material; the list is replaced, never written to. */
export type OpenRests = readonly OpenRest[];

/** Rests there at the start that may be cut once so many sheets are held back: the largest go first, when no whole sheet is left to hold. */
export const restsLeft = ({ rests }: SheetStock, sheets: number, heldBack: number, from: number): OpenRests =>
  rests.slice(Math.max(0, Math.ceil(heldBack - sheets - 1e-9))).map(({ across, along }) => ({ across, along, from }));

/**
 * The rests once pieces are cut that are needed at a minute, and how many sheets were opened for it; `openedFrom` says from when on
 * the first, the second, ... of those is there.
 */
export const cutFromRests = (
  { sheet, worthOf }: SheetStock,
  rests: OpenRests,
  pieces: readonly SomePieces[],
  at: number,
  openedFrom: (sheet: number) => number,
): { rests: OpenRests; opened: number } => {
  let opened = 0;
  let left = rests;
  for (const { piece, count } of inOrderOfCutting(pieces))
    left = cutInRows(left, piece.ways, count, {
      worthOf,
      isThere: ({ from }) => from <= at,
      open: () => {
        opened++;
        return { across: sheet.across, along: sheet.along, from: Math.min(at, openedFrom(opened)) };
      },
      cut: ({ from }, row) => row.rests.map(({ across, along }) => ({ across, along, from })),
    });
  return { rests: left, opened };
};
