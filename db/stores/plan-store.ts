import { promisify } from 'node:util';
import { deflateRaw, inflateRaw } from 'node:zlib';
import { asc, eq, getTableColumns } from 'drizzle-orm';
import type { PlanOfWork } from '../../shared/late-work.ts';
import type { PlanFile, PlanPour } from '../../shared/plan.ts';
import { piecesOfPlan, planReader } from '../../shared/plan-pieces.ts';
import { planPieces, plans } from '../tables/plan.ts';
import type { Tx } from '../transaction.ts';

/**
 * What is known of a stored plan without reading it. Good from `goodFromMinute` (since 1970) until `goodUntilMinute`,
 * which is not included, while the revision is the same.
 */
export type PlanHead = Omit<typeof plans.$inferSelect, 'id' | 'memory' | 'unanswered'>;

/**
 * A plan with its head, and what is over, not recorded and has no place in it. The plan is shared and never changed; `memory` is what the planner made of it, and nobody
 * else's business.
 */
export interface StoredPlan extends PlanHead {
  plan: PlanFile;
  unanswered: PlanOfWork | null;
  /** How it was come by, in the planner's own terms. */
  memory: unknown;
}

const { id: _id, memory: _memory, unanswered: _unanswered, ...HEAD } = getTableColumns(plans);

/** The head of the plan there is; null before the first. */
export const planHead = async (tx: Tx): Promise<PlanHead | null> => (await tx.select(HEAD).from(plans))[0] ?? null;

/** Shorter texts are kept as they are, for whoever looks into the file. */
const LONG_CHARACTERS = 20_000;
/** The quickest: plans shrink to a tenth by it. */
const PACKING = { level: 1 };

const deflated = promisify<string, { level: number }, Buffer>(deflateRaw);
const inflated = promisify<Buffer, Buffer>(inflateRaw);

/** In threads of the runtime's own. */
const packed = async (text: string): Promise<string | Buffer> =>
  text.length < LONG_CHARACTERS ? text : deflated(text, PACKING);

const unpacked = async (piece: string | Buffer): Promise<string> =>
  typeof piece === 'string' ? piece : (await inflated(piece)).toString();

/** A set-up said that it held the sealing coat, before that was a task of its own. */
const withoutCoat = (pour: PlanPour & { oiled?: boolean }): PlanPour => {
  const { oiled: _oiled, ...rest } = pour;
  return rest;
};

/** Piece by piece: others have their turn between two of them. */
const readPlan = async (tx: Tx): Promise<PlanFile> => {
  const reader = planReader();
  for (const { place } of await tx.select({ place: planPieces.place }).from(planPieces).orderBy(asc(planPieces.place)))
    for (const { piece } of await tx.select().from(planPieces).where(eq(planPieces.place, place)))
      reader.add(await unpacked(piece));
  const plan = reader.plan();
  if (!plan) throw new Error('A plan was stored without its pieces.');
  // A plan of an earlier version says the same, but for its number; it knows of no date wanted and of no coat. One that was
  // stored before coats were tasks of their own is not good any more (migration 13): it is where the next one begins.
  return {
    ...plan,
    version: 2,
    coats: plan.coats ?? [],
    pours: plan.coats ? plan.pours : plan.pours.map(withoutCoat),
    score: { ...plan.score, weightedDaysAfterWanted: plan.score.weightedDaysAfterWanted ?? 0 },
  };
};

/** The plan there is, read piece by piece; null before the first. Throws where it was stored without its pieces. */
export const storedPlan = async (tx: Tx): Promise<StoredPlan | null> => {
  const [row] = await tx.select().from(plans);
  if (!row) return null;
  const { id: _id, ...head } = row;
  return { ...head, plan: await readPlan(tx) };
};

const writePieces = async (tx: Tx, plan: PlanFile): Promise<void> => {
  await tx.delete(planPieces);
  let place = 0;
  for (const piece of piecesOfPlan(plan)) {
    await tx.insert(planPieces).values({ place, piece: await packed(piece) });
    place += 1;
  }
};

/**
 * Puts a plan in place of the one before it, under the next number; the numbers go on from 1 and never back. As it is
 * stored then.
 */
export const savePlan = async (tx: Tx, { plan, ...head }: Omit<StoredPlan, 'number'>): Promise<StoredPlan> => {
  const number = ((await planHead(tx))?.number ?? 0) + 1;
  await tx.delete(plans);
  await tx.insert(plans).values({ ...head, id: 1, number });
  await writePieces(tx, plan);
  return { ...head, number, plan };
};

/** A longer search has been through the stored plan and found nothing better. */
export const markImproved = async (tx: Tx): Promise<void> => {
  await tx.update(plans).set({ improved: true });
};
