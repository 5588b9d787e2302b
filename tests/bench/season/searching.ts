import type { Database } from '../../../db/open.ts';
import { improvePlan } from '../../../src/usecases/plan/improve-plan.ts';

/**
 * How far the longer search gets: never run; run to its end once a day, in the evening, as on a busy machine where each
 * change gives up the search of the one before; or run to its end after every change.
 */
export const SEARCHES = ['none', 'short', 'full'] as const;
export type SearchMode = (typeof SEARCHES)[number];

/** Runs the longer search to its end, as the server's thread would; tells whether there was anything to search. */
export const searchNow = async (database: Database, now: string): Promise<boolean> =>
  (await improvePlan({ database, now })) !== 'nothing to do';
