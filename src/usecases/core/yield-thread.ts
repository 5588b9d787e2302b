/**
 * Lets whatever else waits for the one thread go first. Reading, planning and drawing a large yard take tens of
 * milliseconds each; between them other requests are let in.
 */
export const yieldThread = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

/** So many entries of a list take a few milliseconds, whatever is done with each. */
const ENTRIES_AT_ONCE = 250;

/** `list.map(work)`, with others let in every few hundred entries. */
export const mapYielding = async <T, R>(list: readonly T[], work: (entry: T) => R): Promise<R[]> => {
  const results: R[] = [];
  for (let from = 0; from < list.length; from += ENTRIES_AT_ONCE) {
    if (from > 0) await yieldThread();
    for (const entry of list.slice(from, from + ENTRIES_AT_ONCE)) results.push(work(entry));
  }
  return results;
};
