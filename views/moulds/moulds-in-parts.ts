import { listParts } from '../../shared/list-part.ts';
import type { MouldsModel } from '../../src/usecases/moulds/show-moulds.ts';
import { searchQuery } from '../parts/find-form.tsx';

export type MouldsOfKind = MouldsModel['kinds'][number];

/** Moulds on one page: each has forms of its own. */
const MOULDS_SHOWN = 24;

/** A length of which there are more than a page takes, in parts that are about as long as each other. */
const kindInParts = ({ kind, moulds }: MouldsOfKind): MouldsOfKind[] => {
  const parts = Math.ceil(moulds.length / MOULDS_SHOWN);
  const at = (part: number) => Math.ceil((part * moulds.length) / parts);
  return Array.from({ length: parts }, (_, part) => ({ kind, moulds: moulds.slice(at(part), at(part + 1)) }));
};

/** The moulds page by page: whole lengths, as many as a page takes. */
export const mouldsInParts = (kinds: readonly MouldsOfKind[]): MouldsOfKind[][] =>
  listParts(kinds.flatMap(kindInParts), { most: MOULDS_SHOWN, weigh: ({ moulds }) => moulds.length });

/** What was looked for and which page of it, as the end of an address: "?which=clean&from=2"; '' for the first of all. */
export const mouldsQuery = (search: MouldsModel['search'], from: number): string => {
  const query = searchQuery(search);
  if (from === 0) return query;
  return `${query}${query === '' ? '?' : '&'}from=${from}`;
};
