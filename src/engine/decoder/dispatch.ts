import type { Deal } from './deal.ts';
import { type Hold, NONE } from './problem.ts';

/** How the decoder weighs its own choices, in all shifts or in one. */
export interface Choices {
  /** A batch filled under this share of what a fuller one could hold waits for a later session, 0..1. */
  leastFill: number;
  /** What `leastFill` asks for is asked too of what is left of a batch once its materials ran short. */
  leastFillInHand: boolean;
  /** How long the first mould of a batch may wait for others to join it, minutes. */
  waitMinutes: number;
  /** How much more than mass alone a piece of the first order counts when a batch is filled up. */
  firstOrderWeight: number;
  /** How much more a piece counts whose moulds are the scarcest. */
  scarceMouldWeight: number;
  /** Mixes that take no second turn in a session are poured as late in it as they fit. */
  slowMixesLate: boolean;
  /** Give the sealing coat a turn early where a shift has time left for it. */
  coatAhead: boolean;
  /** How much a minute of setting up takes off the worth of a piece when a batch is filled up, kg. */
  workWeight: number;
  /** Which of two pieces of one order is set up first: the one with the scarcer moulds, or the one listed first. */
  scarceFirst: boolean;
  /** Strip all that is due before anything is poured, as a maker would who wants the moulds free. */
  stripFirst: boolean;
  /** Coat moulds that are due for it before any batch is placed, as late as it fits, so that it dries overnight. */
  coatFirst: boolean;
  /** Strip and set up for the next session before the last minutes go to mixes that take no second turn in this one. */
  aheadFirst: boolean;
  /** Index of a mix that is not poured, NONE for none. */
  heldMix: number;
  /** How much later a mould may be ready than one that is wanted more for other pieces, and still be taken instead. */
  spareMinutes: number;
  /** Moulds are not set up for the next session. */
  noAhead: boolean;
  /** Most pieces in one batch, 0 for as many as it holds: moulds that are poured one by one get out of step. */
  mostPieces: number;
  /** `mostPieces` holds for the first batch of the shift only. */
  firstBatchOnly: boolean;
  /** Every mould that is set up gets its sealing coat, due or not: where drying costs nothing, it costs least. */
  coatEarly: boolean;
  /** Index of a mould that takes no pour and is not set up, NONE for none. */
  restMould: number;
  /** Pieces that nobody waits for stay in their moulds. */
  leaveInMoulds: boolean;
  /** Of what is to be poured and set up that goes first for which a mould is set already: moulds are changed over seldom. */
  changeSeldom: boolean;
  /** As by hand: what is due is stripped at once, and empty moulds are filled in the order of the sequence. */
  inOrder: boolean;
  /** Worked as by hand throughout (`workByHand`): of the other choices only `noAhead` counts. */
  byHand: boolean;
  /** Nothing is poured: the shift is for stripping and setting up. */
  noPours: boolean;
  /**
   * Finished pieces that are ready by this day are waited for by whoever wants them, though a new one were ready sooner; 0
   * for none. Day number.
   */
  lotsUntil: number;
  /** Reorders what is poured first: 0 for the sequence as it is, else a number that stands for another order of castings. */
  shuffle: number;
}

/** In so many parts at most are the pieces of an order set up, others between them. */
export const MOST_PARTS = 2;

/**
 * What the decoder is told: whose pieces come first, and how it weighs its own choices. One dispatch and one yard give
 * one plan; the search varies dispatches, never plans.
 */
export interface Dispatch {
  /** Every order once, by index; earlier ones get pieces first, and theirs are set up first. */
  sequence: Int32Array;
  /**
   * What is set up first, where that is not what the sequence says: every order once, or up to `MOST_PARTS` times, its
   * pieces then split evenly among its places. Whoever they are set up for, the sequence says who gets them.
   */
  setUp?: Int32Array;
  choices: Choices;
  /** Choices that differ in single shifts, by shift. */
  inShift: Map<number, Choices>;
  /**
   * Orders none of whose pieces is poured before a shift: how they are fitted in behind what is promised. They come last
   * in the sequence, in this order.
   */
  heldBack?: readonly Hold[];
  /**
   * Orders that wait for no finished piece for the sake of their date: as one without a date, each gets whichever is ready
   * sooner, that piece or a new one.
   */
  pourFirst?: readonly number[];
  /** What is dealt as the plan that stands had it; nothing, where anybody may get anything. */
  deal?: Deal;
}

/**
 * What the decoder weighs by where a dispatch says nothing else. Choices of a memory that lack one get it from here.
 */
export const DEFAULT_CHOICES: Choices = {
  leastFill: 0.6,
  leastFillInHand: false,
  waitMinutes: 30,
  firstOrderWeight: 1,
  scarceMouldWeight: 0.5,
  slowMixesLate: true,
  coatAhead: true,
  workWeight: 0,
  scarceFirst: true,
  stripFirst: false,
  coatFirst: false,
  aheadFirst: false,
  heldMix: NONE,
  spareMinutes: 30,
  noAhead: false,
  mostPieces: 0,
  firstBatchOnly: false,
  coatEarly: false,
  restMould: NONE,
  leaveInMoulds: false,
  changeSeldom: false,
  inOrder: false,
  byHand: false,
  noPours: false,
  lotsUntil: 0,
  shuffle: 0,
};

/**
 * A dispatch of a sequence (order indices), with the default choices but for those that are named, the same in all
 * shifts.
 */
export const dispatchOf = (sequence: Int32Array, choices: Partial<Choices> = {}): Dispatch => ({
  sequence,
  choices: { ...DEFAULT_CHOICES, ...choices },
  inShift: new Map(),
});

/** What the decoder weighs by in one shift: the choices of that shift alone, or those of all. */
export const choicesIn = (dispatch: Dispatch, shift: number): Choices =>
  dispatch.inShift.get(shift) ?? dispatch.choices;
