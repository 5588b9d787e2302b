import type { Mould } from '../../../shared/mould.ts';
import type { YardFile } from '../../../shared/yard-file.ts';

const NUMBERED = /^(.*\S)\s*(?:no\.?|#)\s*\d+$/i;

/** What moulds of one length are called together: "1100" for "1100 no. 2". An unnumbered mould is a kind of its own. */
export const mouldKind = (id: string): string => NUMBERED.exec(id)?.[1] ?? id;

/** True when a pour may go into it, now or once it is mended by a day that is set. */
const usable = ({ condition, repairedOn }: Pick<Mould, 'condition' | 'repairedOn'>): boolean =>
  condition !== 'retired' && (condition !== 'damaged' || repairedOn !== undefined);

/** The usable moulds that make a casting. */
export const mouldsFor = (yard: YardFile, casting: string): Mould[] =>
  yard.moulds.filter((mould) => usable(mould) && mould.makes.some((make) => make.casting === casting));
