/**
 * Lets whatever else waits for the one thread go first. Reading, planning and drawing a large yard take tens of
 * milliseconds each; between them other requests have their turn.
 */
export const letOthersRun = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
