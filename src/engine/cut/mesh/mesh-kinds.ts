import type { MeshKind } from './block.ts';
import { openingsOfPiece, type Size, type WireGrid } from './openings.ts';

/** Pieces of mesh of one size for a batch or an order. Its width lies across the sheet, or along it where it may turn. */
export interface MeshPiece extends Size {
  count: number;
  mayTurn: boolean;
  for: string;
}

/** Pieces by kind: what lies the same way on a sheet is the same to the search. */
export interface PiecesByKind {
  kinds: MeshKind[];
  /** The pieces of each kind, whoever they are for. */
  pieces: MeshPiece[][];
}

/**
 * Pieces that take the same openings are of one kind.
 *
 * Example: of a mesh of 50, 180 by 890 and 190 by 900 are one kind of 4 by 18.
 */
export const kindsOf = (pieces: readonly MeshPiece[], grid: WireGrid): PiecesByKind => {
  const byKey = new Map<string, { kind: MeshKind; pieces: MeshPiece[] }>();
  for (const piece of pieces) {
    const asItIs = openingsOfPiece(piece, grid);
    const turned = openingsOfPiece(piece, grid, true);
    const isSquare = asItIs.across === turned.across && asItIs.along === turned.along;
    const ways = [{ size: asItIs, isTurned: false }];
    if (piece.mayTurn && !isSquare) ways.push({ size: turned, isTurned: true });
    const key = ways.map(({ size }) => `${size.across} ${size.along}`).join();
    const same = byKey.get(key);
    if (same) same.pieces.push(piece);
    else byKey.set(key, { kind: { ways, wanted: 0 }, pieces: [piece] });
  }
  const found = [...byKey.values()];
  const wanted = (list: MeshPiece[]) => list.reduce((sum, x) => sum + x.count, 0);
  return { kinds: found.map((x) => ({ ...x.kind, wanted: wanted(x.pieces) })), pieces: found.map((x) => x.pieces) };
};

/** Gives each place of a kind to the next piece of that kind that has none. */
export const dealer = (pieces: readonly MeshPiece[][]): ((kind: number) => MeshPiece) => {
  const queues = pieces.map((list) => list.flatMap((x) => Array.from({ length: x.count }, () => x)));
  return (kind) => queues[kind]!.shift()!;
};
