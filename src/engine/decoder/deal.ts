import type { Minute } from '../../../shared/time.ts';
import type { FixedPour } from './fixed-batch.ts';

/** What one order has of a casting: finished pieces, pieces in moulds, and fixed pours to come. */
export interface Had {
  lots: number;
  inMoulds: number;
  pours: number;
}

/**
 * To whom pieces go before anybody else is asked, as the plan that stands had it: fixed pours, pieces of lots, and
 * pieces in moulds, each for one order, by index.
 */
export interface Deal {
  pours: ReadonlyMap<FixedPour, number>;
  lots: readonly { lot: number; order: number; count: number }[];
  pieces: readonly { piece: number; order: number }[];
  /** When orders that are not packed have their parts, the earliest first. */
  parts: readonly { order: number; at: Minute }[];
  /** By order, what that comes to by casting. */
  had: ReadonlyMap<number, ReadonlyMap<number, Had>>;
}
