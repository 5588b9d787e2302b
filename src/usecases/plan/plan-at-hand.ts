import type { Database, Tx } from '../../../db/open.ts';
import { planHead, type StoredPlan, storedPlan } from '../../../db/stores/plan-store.ts';
import { fixedHours, loadYardFile, revision } from '../../../db/stores/yard-store.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { UseCaseContext } from '../core/context.ts';

/** The stored plan with the data it was made from. None of it is ever changed. */
export interface PlanAtHand {
  stored: StoredPlan;
  /** The data as of some now: nothing else of them depends on it. */
  file: YardFile;
  /** How many hours before it begins a session is fixed. */
  hours: number;
}

interface Kept {
  hand: PlanAtHand;
  /** How many writes of this process had been committed by then. */
  commits: number;
}

/** What was stored last, by database: a request then reads no plan and no yard, and parses nothing. */
const kept = new WeakMap<Database, Kept>();

/** Keeps what a write has just stored, once it is committed. */
export const keepAtHand = (database: Database, hand: PlanAtHand): void => {
  kept.set(database, { hand, commits: database.commits() });
};

/** The plan that is stored, without reading it again when only what is known beside it is another. */
const storedOrKept = async (tx: Tx, before: StoredPlan | undefined): Promise<StoredPlan | null> => {
  const head = await planHead(tx);
  if (!head || before?.number !== head.number) return head && storedPlan(tx);
  return before.improved === head.improved ? before : { ...before, ...head };
};

/**
 * The stored plan, if it is one of the data as they are now. What is kept from the last time counts only while the
 * database says that nothing was stored since, by this process or another; all else is read. To be asked before anything
 * is written in the transaction.
 */
export const planAtHand = async (
  tx: Tx,
  { database, now }: Pick<UseCaseContext, 'database' | 'now'>,
): Promise<PlanAtHand | null> => {
  const before = kept.get(database);
  const commits = database.commits();
  const stored = await storedOrKept(tx, before?.hand.stored);
  if (!stored || stored.revision !== (await revision(tx))) return null;
  if (before?.hand.stored === stored && before.commits === commits) return before.hand;
  const hand = { stored, file: await loadYardFile(tx, now), hours: await fixedHours(tx) };
  kept.set(database, { hand, commits });
  return hand;
};

/** The data of a plan as of an instant. */
export const fileAt = ({ file }: PlanAtHand, now: string): YardFile => ({ ...file, yard: { ...file.yard, now } });
