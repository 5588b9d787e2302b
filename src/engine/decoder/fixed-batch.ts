import type { PlanFile } from '../../../shared/plan.ts';

/** A fixed pour as it will be placed again. */
export interface FixedPour {
  id: string;
  mould: number;
  casting: number;
  prepStart: number;
  prepMinutes: number;
  coated: boolean;
  fillStart: number;
  /** When the plan it comes from strips what it fills. */
  stripAsPlanned: number;
  /** Strip of what the mould holds before it is set up; NONE when it is empty by then. */
  stripFirst: number;
  /** When that piece is ready, and the rack spaces it takes until then; NONE when it takes none. */
  rackUntil: number;
  rackSpaces: number;
}

/** A fixed batch that the rules still allow, with what has to be done for it. */
export interface FixedBatch {
  id: string;
  mix: number;
  start: number;
  minutes: number;
  kg: number;
  bags: number;
  pours: FixedPour[];
}

/** Fixed batches that stay, by start, and those that do not, with the reason that goes into the plan file. */
export interface FixedBatches {
  batches: FixedBatch[];
  dropped: PlanFile['dropped'];
}
