import { isRetired } from '../../engine/book/mould-state.ts';
import { hasPhrase, hasWords } from '../typed/search-words.ts';
import type { MouldFacts } from './mould-facts.ts';

/** Which moulds are looked for, by their condition in the maker's words. */
export const WHICH_MOULDS = ['all', 'clean', 'to be cleaned', 'full', 'damaged', 'scrapped'] as const;
export type WhichMoulds = (typeof WHICH_MOULDS)[number];

export interface MouldSearch {
  /** Words of its name, what it makes, what is in it and for whom, a note. */
  find: string;
  which: WhichMoulds;
}

const IS: Readonly<Record<WhichMoulds, (mould: MouldFacts) => boolean>> = {
  all: () => true,
  clean: ({ condition, piece }) => condition === 'ready' && piece === null,
  'to be cleaned': ({ condition, piece }) => condition === 'dirty' && piece === null,
  full: ({ piece }) => piece !== null,
  damaged: ({ condition }) => condition === 'damaged',
  scrapped: isRetired,
};

const textsOf = ({ id, makes, note, damageNote, piece, nextPour }: MouldFacts) => [
  ...[id, ...makes, note, damageNote],
  ...[piece?.name, piece?.customer, nextPour?.customer],
];

/**
 * Moulds that are as was asked for and have all the words. What is painted on some of them means those alone: "600 no. 2"
 * is no mould that has a 600, a no. and a 2 somewhere.
 */
export const foundMoulds = (moulds: readonly MouldFacts[], { find, which }: MouldSearch): readonly MouldFacts[] => {
  const named = moulds.filter(({ id }) => hasPhrase(find, id));
  const found = named.length > 0 ? named : moulds.filter((mould) => hasWords(find, textsOf(mould)));
  return found.filter(IS[which]);
};
