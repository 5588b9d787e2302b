/**
 * What the decoder is told: whose pieces come first, and how it weighs its own choices. One dispatch and one yard give
 * one plan; the search varies dispatches, never plans.
 */
export interface Dispatch {
  /** Every order once, by index; pieces of earlier ones are set up first. */
  sequence: Int32Array;
  /** A batch filled under this share of what a fuller one could hold waits for a later session, 0..1. */
  leastFill: number;
  /** How long the first mould of a batch may wait for others to join it, minutes. */
  waitMinutes: number;
  /** How much more than mass alone a piece of the first order counts when a batch is filled up. */
  firstOrderWeight: number;
  /** How much more a piece counts whose moulds are the scarcest. */
  scarceMouldWeight: number;
  /** Mixes that take no second turn in a session are poured as late in it as they fit. */
  slowMixesLate: boolean;
  /** Give the sealing coat a turn early where it can dry overnight. */
  coatAhead: boolean;
  /** Which of two pieces of one order is set up first: the one with the scarcer moulds, or the one listed first. */
  scarceFirst: boolean;
}

export const dispatchOf = (sequence: Int32Array, choices: Partial<Omit<Dispatch, 'sequence'>> = {}): Dispatch => ({
  sequence,
  leastFill: 0.6,
  waitMinutes: 30,
  firstOrderWeight: 1,
  scarceMouldWeight: 0.5,
  slowMixesLate: true,
  coatAhead: true,
  scarceFirst: true,
  ...choices,
});
