export type { MouldFacts } from '../../src/usecases/moulds/mould-facts.ts';

/** Where a mark is sent; `query` is what was looked for, to come back to it. */
export const mouldPath = (id: string, mark: string, query: string): string =>
  `/moulds/${encodeURIComponent(id)}/${mark}${query}`;
