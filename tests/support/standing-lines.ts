import type { StockEntry } from '../../shared/stock-entry.ts';

/** A stock book without what was undone, and what says so: a line that others name an even number of times stands. */
export const standingLines = (book: readonly StockEntry[]): StockEntry[] => {
  const turns = new Map<number, number>();
  for (const { ofLine } of book) if (ofLine !== undefined) turns.set(ofLine, (turns.get(ofLine) ?? 0) + 1);
  return book.filter(({ ofLine }, place) => ofLine === undefined && (turns.get(place) ?? 0) % 2 === 0);
};
