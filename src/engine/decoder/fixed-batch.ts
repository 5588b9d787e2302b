import type { PlanFile } from '../../../shared/plan.ts';

/** Something that will lie on the rack whatever else is placed: from when, until when, and the spaces it takes. */
export interface RackHold {
  from: number;
  until: number;
  spaces: number;
}

/** A sealing coat. */
export interface FixedCoat {
  mould: number;
  start: number;
  minutes: number;
}

/** A fixed pour as it will be placed again. */
export interface FixedPour {
  id: string;
  mould: number;
  casting: number;
  prepStart: number;
  prepMinutes: number;
  /** Sealing coat before its set-up, where one is fixed. */
  coat: FixedCoat | null;
  fillStart: number;
  /** When the plan it comes from strips what it fills. */
  stripAsPlanned: number;
  /** When what it fills is stripped, where that is fixed too; NONE where any time will do. */
  stripAt: number;
  /** Strip of what the mould holds before it is set up; NONE when it is empty by then. */
  stripFirst: number;
}

/** When a fixed pour first needs its mould empty: for its coat, or else for its set-up. */
export const readiedFrom = ({ coat, prepStart }: FixedPour): number => coat?.start ?? prepStart;

/** A fixed batch that the rules still allow, with what has to be done for it. */
export interface FixedBatch {
  id: string;
  mix: number;
  start: number;
  minutes: number;
  kg: number;
  bags: number;
  pours: FixedPour[];
  /** Under way at `now`: its moulds are full or being filled, and what it takes was taken out of the stock. */
  isBegun: boolean;
}

/** A fixed strip of a mould, of what it holds by then. */
interface FixedStrip {
  mould: number;
  start: number;
}

/** When an order is packed; one for each spell. */
interface FixedPack {
  order: number;
  start: number;
  minutes: number;
}

/** A set-up for a pour that is not fixed itself. */
export interface FixedPrep {
  mould: number;
  casting: number;
  start: number;
  minutes: number;
}

/**
 * What is fixed and can stay: batches by start, strips that no fixed pour comes after, packings, set-ups, coats; and what cannot,
 * with the reason that goes into the plan file.
 */
export interface FixedWork {
  batches: FixedBatch[];
  strips: FixedStrip[];
  packs: FixedPack[];
  preps: FixedPrep[];
  /** Those that no fixed pour comes after. */
  coats: FixedCoat[];
  /** By mould: when the piece that is in it now is stripped, where that is fixed. */
  stripNow: ReadonlyMap<number, number>;
  /** What lies on the rack after fixed strips. */
  rack: RackHold[];
  dropped: PlanFile['dropped'];
}
