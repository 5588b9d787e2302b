import { plans } from '../tables/plan.ts';
import type { Tx } from '../transaction.ts';

export type StoredPlan = Omit<typeof plans.$inferSelect, 'id'>;

export const storedPlan = async (tx: Tx): Promise<StoredPlan | null> => {
  const [row] = await tx.select().from(plans);
  if (!row) return null;
  const { id: _id, ...plan } = row;
  return plan;
};

/** In place of the one before it. */
export const savePlan = async (tx: Tx, plan: StoredPlan): Promise<void> => {
  await tx.delete(plans);
  await tx.insert(plans).values({ ...plan, id: 1 });
};

/** A longer search has been through the stored plan and found nothing better. */
export const markImproved = async (tx: Tx): Promise<void> => {
  await tx.update(plans).set({ improved: true });
};
