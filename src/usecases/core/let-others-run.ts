/**
 * Lets whatever else waits for the one thread go first. Reading, planning and drawing a large yard take tens of
 * milliseconds each; between them other requests have their turn.
 */
export const letOthersRun = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

/** So many entries of a list take a few milliseconds, whatever is done with each. */
const ENTRIES_A_TURN = 250;

/** `list.map(work)`, with others having their turn every few hundred entries. */
export const mapInTurns = async <T, R>(list: readonly T[], work: (entry: T) => R): Promise<R[]> => {
  const results: R[] = [];
  for (let from = 0; from < list.length; from += ENTRIES_A_TURN) {
    if (from > 0) await letOthersRun();
    for (const entry of list.slice(from, from + ENTRIES_A_TURN)) results.push(work(entry));
  }
  return results;
};
