import type { Mould } from '../../../shared/mould.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { isOutForGood, makesPiece } from './mould-state.ts';

const NUMBERED = /^(.*\S)\s*(?:no\.?|#)\s*\d+$/i;

/** What moulds of one length are called together: "1100" for "1100 no. 2". An unnumbered mould is a kind of its own. */
export const mouldKind = (id: string): string => NUMBERED.exec(id)?.[1] ?? id;

/** The moulds that make a casting, now or once they are mended by a day that is set. */
export const mouldsFor = (yard: YardFile, casting: string): Mould[] =>
  yard.moulds.filter((mould) => !isOutForGood(mould) && makesPiece(mould, casting));
