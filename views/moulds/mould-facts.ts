export type { MouldFacts } from '../../src/usecases/moulds/mould-facts.ts';

/** Where a mark is sent; `query` is what was looked for, to come back to it. */
export const mouldPath = (id: string, mark: string, query: string): string =>
  `/moulds/${encodeURIComponent(id)}/${mark}${query}`;

/** The page of one mould: it is where a tag on the mould leads. */
export const mouldPagePath = (id: string): string => `/mould/${encodeURIComponent(id)}`;

/** What a form of that page is sent with, so that its answer comes back there. */
export const FROM_MOULD = '?from=mould';
