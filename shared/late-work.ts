import type { z } from 'zod';
import { type PlanBatch, type PlanCoat, type PlanOrder, type PlanPour, type PlanStrip, planFile } from './plan.ts';

/** The part of a plan file that says what there is to do, as an archive has it of what is not recorded. */
export const planOfWork = planFile
  .pick({ batches: true, pours: true, strips: true, orders: true, coats: true, sticks: true, sheets: true })
  .partial({ coats: true, sticks: true });
/**
 * What a plan has to do, when, and from which sticks and sheets it cuts for it as far as that is known. Without `coats`, it was put aside
 * before sealing coats were tasks of their own.
 */
export type PlanOfWork = z.infer<typeof planOfWork>;

/**
 * Work whose time is over, or that was under way, which a change took off the list of what is not recorded yet, as it was planned. Kept with that
 * change, so that undoing it brings the work back.
 */
export interface LateTaken {
  /** Which steps of the list it was. */
  names: string[];
  /** Which steps stand in for them: a batch that was begun at another time. They go when these come back. */
  instead?: string[];
  batches: PlanBatch[];
  /** Of the batches, and those of other batches whose pieces were stripped late too. */
  pours: PlanPour[];
  /** Pours of later sessions, for their set-up. */
  preps: PlanPour[];
  /** Left out where it was taken before sealing coats were tasks of their own. */
  coats?: PlanCoat[];
  strips: PlanStrip[];
  orders: PlanOrder[];
}
