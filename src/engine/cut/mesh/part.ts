import { areaOf, type Block } from './block.ts';
import type { Openings } from './openings.ts';

/**
 * What becomes of a sheet or part of one: a piece, a rest, or two parts by one cut from edge to edge, so many openings
 * from its left or its upper edge.
 */
export type Part =
  | { is: 'piece'; kind: number; isTurned: boolean }
  | { is: 'rest' }
  | { is: 'cut'; cut: 'across' | 'along'; at: number; first: Part; second: Part };

const REST: Part = { is: 'rest' };

/** Cuts a block's own outline off first, what is left beyond it in one piece as large as it can be, and then the block. */
const trimmed = (block: Block, space: Openings, inside: Part): Part => {
  const beside = { across: space.across - block.across, along: space.along };
  const below = { across: space.across, along: space.along - block.along };
  const isBesideFirst = areaOf(beside) >= areaOf(below);
  const across = (first: Part): Part =>
    beside.across === 0 ? first : { is: 'cut', cut: 'across', at: block.across, first, second: REST };
  const along = (first: Part): Part =>
    below.along === 0 ? first : { is: 'cut', cut: 'along', at: block.along, first, second: REST };
  return isBesideFirst ? across(along(inside)) : along(across(inside));
};

/**
 * How a block is cut out of a sheet, or part of one, that holds it: cut by cut, each from edge to edge. Sizes in openings.
 *
 * Example: a piece of 2 by 3 in 2 by 5 is one cut along at 3, the piece first and then a rest of 2 by 2.
 */
export const partOf = (block: Block, space: Openings): Part => {
  if ('kind' in block) return trimmed(block, space, { is: 'piece', kind: block.kind, isTurned: block.isTurned });
  const { cut, first, second } = block;
  const at = first[cut];
  // The outer edge is left as it is: the part beyond the second block goes with it, and is cut off there.
  return {
    is: 'cut',
    cut,
    at,
    first: partOf(first, { ...space, [cut]: at }),
    second: partOf(second, { ...space, [cut]: space[cut] - at }),
  };
};
