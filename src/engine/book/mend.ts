import type { PieceMark } from '../../../shared/piece-mark.ts';
import type { Entry } from './entry.ts';

/** A piece that waits to be mended, as the store names it. */
export interface WaitingPiece extends PieceMark {
  id: number;
  casting: string;
}

/** It is mended: a finished piece for whichever order it helps most, fit to go out from `readyAt` (null: at once). */
export const mend = ({ id, casting, mould, filledAt }: WaitingPiece, readyAt: string | null): Entry[] => [
  { kind: 'aside no more', id },
  { kind: 'pieces in', lot: { casting, readyAt, order: null }, count: 1, mark: { mould, filledAt } },
];

/** It is lost after all. */
export const scrap = ({ id }: Pick<WaitingPiece, 'id'>): Entry[] => [{ kind: 'aside no more', id }];
