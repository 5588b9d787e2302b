import type { Openings } from './openings.ts';

/** One kind of piece: the ways it may lie (as it is, and turned where it may be), and how many are wanted. */
export interface MeshKind {
  ways: readonly { size: Openings; isTurned: boolean }[];
  wanted: number;
}

/** A piece, or two blocks that one cut from edge to edge takes apart. Its size is the least that holds it. */
export type Block =
  | (Openings & { kind: number; isTurned: boolean })
  | (Openings & { cut: 'across' | 'along'; first: Block; second: Block });

/** Pieces of one kind by themselves, one for each way that it may lie. */
export const pieceBlocks = (kinds: readonly MeshKind[], kind: number): Block[] =>
  kinds[kind]!.ways.map(({ size, isTurned }) => ({ ...size, kind, isTurned }));

/**
 * Two blocks side by side across the width, or one after the other along the length.
 *
 * Example: 2 by 3 and 4 by 1, across, take 6 by 3; along they take 4 by 4.
 */
export const joined = (cut: 'across' | 'along', first: Block, second: Block): Block => ({
  across: cut === 'across' ? first.across + second.across : Math.max(first.across, second.across),
  along: cut === 'along' ? first.along + second.along : Math.max(first.along, second.along),
  cut,
  first,
  second,
});

/** Whether a block goes on a sheet or part of one as it lies. */
export const fits = (block: Openings, sheet: Openings): boolean =>
  block.across <= sheet.across && block.along <= sheet.along;

/** Openings of an area: 4 by 18 is 72. */
export const areaOf = ({ across, along }: Openings): number => across * along;
