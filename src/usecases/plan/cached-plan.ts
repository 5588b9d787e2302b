import type { Database, Tx } from '../../../db/open.ts';
import { planHead, type StoredPlan, storedPlan } from '../../../db/stores/plan-store.ts';
import { fixedHours, loadYardFile, revision } from '../../../db/stores/yard-store.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { asOf } from '../../engine/book/as-of.ts';
import type { UseCaseContext } from '../core/context.ts';

/** The stored plan with the data it was made from. None of it is ever changed. */
export interface CachedPlan {
  stored: StoredPlan;
  /** The data as of some now: nothing else of them depends on it. */
  file: YardFile;
  /** How many hours before it begins a session is fixed. */
  hours: number;
}

interface CacheEntry {
  cached: CachedPlan;
  /** How many writes of this process had been committed by then. */
  commits: number;
}

/** What was stored last, by database: a request then reads no plan and no yard, and parses nothing. */
const cache = new WeakMap<Database, CacheEntry>();

/** Keeps what a write has just stored, once it is committed. */
export const cachePlan = (database: Database, cached: CachedPlan): void => {
  cache.set(database, { cached, commits: database.commits() });
};

/** The plan that is stored, without reading it again when only what is known beside it is another. */
const storedOrCached = async (tx: Tx, before: StoredPlan | undefined): Promise<StoredPlan | null> => {
  const head = await planHead(tx);
  if (!head || before?.number !== head.number) return head && storedPlan(tx);
  return before.improved === head.improved ? before : { ...before, ...head };
};

/**
 * The stored plan, if it is one of the data as they are now. What is kept from the last time counts only while the
 * database says that nothing was stored since, by this process or another; all else is read. To be asked before anything
 * is written in the transaction.
 */
export const cachedPlan = async (
  tx: Tx,
  { database, now }: Pick<UseCaseContext, 'database' | 'now'>,
): Promise<CachedPlan | null> => {
  const before = cache.get(database);
  const commits = database.commits();
  const stored = await storedOrCached(tx, before?.cached.stored);
  if (!stored || stored.revision !== (await revision(tx))) return null;
  if (before?.cached.stored === stored && before.commits === commits) return before.cached;
  const cached = { stored, file: await loadYardFile(tx, now), hours: await fixedHours(tx) };
  cache.set(database, { cached, commits });
  return cached;
};

/** The data of a plan as of an instant. */
export const fileAt = ({ file }: CachedPlan, now: string): YardFile => asOf(file, now);
