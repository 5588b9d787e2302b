import type { PieceKey } from '../../src/usecases/trace/show-piece.ts';

/** The page of a piece, by its mark; `minute` is when its mould was full, counted since 1970. */
export const piecePath = ({ minute, mould }: PieceKey): string => `/piece/${minute}/${encodeURIComponent(mould)}`;

/** What a photo is fetched by. */
export const photoPath = (photo: string): string => `/photo/${photo}`;
