import type { PlanBatch, PlanOrder, PlanPour, PlanStrip } from './plan.ts';

/**
 * Work of a session that is over which a change took off the list of what is not written down yet, as it was planned.
 * Kept with that change, so that undoing it brings the work back.
 */
export interface LateTaken {
  /** Which steps of the list it was. */
  names: string[];
  batches: PlanBatch[];
  /** Of the batches, and those of other batches whose pieces were stripped late too. */
  pours: PlanPour[];
  /** Pours of later sessions, for their set-up. */
  preps: PlanPour[];
  strips: PlanStrip[];
  orders: PlanOrder[];
}
