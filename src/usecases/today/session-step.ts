import type { Minute } from '../../../shared/time.ts';
import type { LeftOver } from '../../engine/pack/left-over.ts';
import type { ContentsLine } from '../orders/order-contents.ts';
import type { HeaviestPiece } from '../typed/heavy-piece.ts';
import type { ColdNights } from './cold-nights.ts';
import type { Drying } from './drying.ts';

export type { LeftOver, LeftOverWhy } from '../../engine/pack/left-over.ts';

/** So much of a material, in the unit that is shown. */
export interface AmountFacts {
  name: string;
  unit: string;
  quantity: number;
}

/** An ingredient of a batch; `measured` is how it is measured out ("180 ml"), null where it is counted. */
export interface IngredientFacts extends AmountFacts {
  measured: string | null;
}

/** What pieces are cut from by the plan: so many of them from offcuts of a length, or from whole ones (null). */
export interface CutFrom {
  offcut: string | null;
  count: number;
  sticks: number;
}

/** Lengths to cut that are equal. */
export interface CutFacts {
  name: string;
  /** In the yard's units. */
  length: string;
  count: number;
  /** Empty where the plan does not say. */
  from: readonly CutFrom[];
}

/** Instants. */
interface Timed {
  at: string;
  until: string;
}

/** A step is known by its name: by it it is said that it was done, or not. */
interface Step extends Timed {
  name: string;
}

/** Before the first of the work, and after the last. */
export interface EdgeStep extends Step {
  kind: 'set up' | 'clear up';
}

/** A mould to be cleaned, where it is dirty, and given its sealing coat. */
export interface CoatStep extends Step {
  kind: 'coat';
  mould: string;
  clean: boolean;
  /** Nothing is done in it before. */
  dryFrom: string;
  /** A turn comes before it: a piece is in the mould still, or is to be poured first. */
  waits: boolean;
}

/** A mould to be set up for a pour. */
export interface PrepStep extends Step {
  kind: 'prep';
  mould: string;
  casting: string;
  piece: string;
  clean: boolean;
  /** Its sealing coat comes before it, and is not written down yet. */
  sealed: boolean;
  /** What it is set for now, where that is another piece. */
  changeFrom: string | null;
  /** What is laid ready, and what is cut, for the piece. */
  fittings: readonly AmountFacts[];
  cuts: readonly CutFacts[];
  /** A turn comes before it: a piece is in the mould still, or is to be poured first. */
  waits: boolean;
}

/** One mould of a batch. */
export interface PourFacts extends Timed {
  mould: string;
  casting: string;
  piece: string;
  /** It gets its sealing coat before this pour. */
  sealed: boolean;
  order: string | null;
  /** Null: for stock. */
  customer: string | null;
}

/** What is mixed, and how it is measured out. */
export interface BatchSlip {
  bags: number;
  ingredients: readonly IngredientFacts[];
  /** For all of it, measured out; null where nobody said how much. */
  water: string | null;
  /** What is written down of the water in place of an amount. */
  waterNote: string | null;
}

/** What goes into one bag of a mix: said once for all its batches. */
export interface RecipeFacts {
  mix: string;
  perBag: BatchSlip;
}

/** A batch, from mixing to the last mould. */
export interface BatchStep extends Step, BatchSlip {
  kind: 'batch';
  mixEnd: string;
  mix: string;
  /** What goes into the moulds beside the mix. */
  fittings: readonly AmountFacts[];
  cuts: readonly CutFacts[];
  usableUntil: string;
  /** Someone stays until then to keep it wet; null where nobody has to. */
  wetUntil: string | null;
  pours: readonly PourFacts[];
  people: number;
  /** What of it is thrown away, where that is much, and why. */
  leftOver: LeftOver | null;
  /** How cold it is expected to be in the nights after it, where that may be frost. */
  coldNights: ColdNights | null;
  /** Whether its surface dries fast by the weather of the day. */
  drying: Drying | null;
  /** A turn of one of its moulds comes before it. */
  waits: boolean;
}

/** A piece to be taken out of its mould. */
export interface StripStep extends Step {
  kind: 'strip';
  mould: string;
  piece: string;
  /** Null: for stock. */
  customer: string | null;
  mayFrom: string;
  people: number;
  /** What it weighs; null where its kind is not known any more. */
  lift: HeaviestPiece | null;
  /** It is in the mould by the stock book, not only by the plan. */
  inMould: boolean;
  /** The name of the piece, by which its strip is found again. */
  pieceKey: string;
}

/** How much of an order one packing of several does: minutes, and all of it counted from the first. */
interface PackPart {
  minutes: number;
  before: number;
  inAll: number;
  /** When it goes on, an instant; null for the last. */
  goesOn: string | null;
}

/** An order to be packed, with the parts and lengths its kits take. */
export interface PackStep extends Step {
  kind: 'pack';
  order: string;
  customer: string;
  /** Null where it is packed in one go. */
  part: PackPart | null;
  contents: readonly ContentsLine[];
  parts: readonly AmountFacts[];
  cuts: readonly CutFacts[];
  /** Null where no pieces go into it. */
  heaviest: HeaviestPiece | null;
}

/** The name of a piece by its mould and when that was full. */
export const pieceKeyOf = (mould: string, filled: Minute): string => `piece ${filled} ${mould}`;

/** Something the plan has for a session. */
export type SessionStep = EdgeStep | CoatStep | PrepStep | BatchStep | StripStep | PackStep;
