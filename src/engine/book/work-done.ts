import type { OrderLine } from '../../../shared/order.ts';
import type { CameOut } from '../../../shared/piece-to-mend.ts';
import type { CutFrom } from './sheets-cut.ts';

/** One mould that was filled. `coated`: it got its sealing coat before this pour, and nobody wrote that down. */
export interface Filled {
  mould: string;
  casting: string;
  /** The order it is set aside for. Null: for nobody, so that the plan gives it to whom it helps most. */
  order: string | null;
  coated: boolean;
  /** When this mould was full, an instant. */
  filledAt: string;
}

/** A batch that was mixed and poured. */
export interface PourWork {
  /** In the order of filling. */
  pours: readonly Filled[];
  /** How many bags were mixed; null: as many as the pieces need. */
  bags: number | null;
  /** What the plan cuts for it from which stick or sheet; left out: where it fits best. */
  cutFrom?: readonly CutFrom[];
  /** What is told of it beside; left out, all was by the recipe. */
  told?: BatchTold;
  /** When somebody said that it was being mixed, an instant; left out, nobody did. */
  mixedFrom?: string;
  /** When somebody said that it was mixed; left out, nobody did. */
  mixedAt?: string;
  /** When it was tapped as poured, an instant; left out, it was told of later. */
  tappedAt?: string;
}

/** What is told of a batch beside what was poured: what was not by the recipe, read off the bag, or measured. */
export interface BatchTold {
  /** Read off the bags, as dates. */
  bagDates?: readonly string[];
  /** In all. */
  waterLitres?: number;
  mortarCelsius?: number;
  airCelsius?: number;
  /** Who mixed it. */
  by?: string;
  note?: string;
}

/** A piece that was taken out of its mould. */
export interface StripWork {
  mould: string;
  cameOut: CameOut;
  /** What is wrong with a piece that is not good, in a few words; empty where nobody said. */
  reason: string;
  /** When it was out, an instant. */
  doneAt: string;
  /** By the taps; left out, it was told of later. */
  timed?: TimedWork;
}

/** When a task was tapped as done, and when it was begun, where taps tell that too; both instants. */
interface TimedWork {
  tappedAt: string;
  workedFrom?: string;
}

/** A mould that was cleaned and given its sealing coat. */
export interface CoatWork {
  mould: string;
  /** When it was on, an instant: from then on it dries. */
  doneAt: string;
}

/** A mould that was made ready to pour. `coated`: it got its sealing coat, and nobody wrote that down. */
export interface SetUpWork {
  mould: string;
  casting: string;
  coated: boolean;
  /** When it was ready, an instant. */
  doneAt: string;
  /** By the taps; left out, it was told of later. */
  timed?: TimedWork;
}

/** Finished pieces by their place in the yard file. */
export interface FromFinished {
  finished: number;
  count: number;
}

/** An order that was packed, or packed for a while. */
export interface PackWork {
  order: string;
  /** All of its lines. */
  lines: readonly OrderLine[];
  /** How long it was packed for, in minutes, where more of it may be left; left out: all of it is packed. */
  minutes?: number;
  /** The pieces the plan gives it: taken before any others. */
  planned: readonly FromFinished[];
  /** The maker has told which pieces they were: also such as were set aside for another order. */
  named?: boolean;
  /** The maker has counted: pieces that the book is short of were there. */
  evenShort: boolean;
  /** What the plan cuts for it from which stick; left out: where it fits best. */
  cutFrom?: readonly CutFrom[];
  /** When it was packed, an instant. */
  doneAt: string;
}

/** Work done in the yard that a plan has in it. */
export type WorkDone =
  | ({ kind: 'poured' } & PourWork)
  | ({ kind: 'stripped' } & StripWork)
  | ({ kind: 'coated' } & CoatWork)
  | ({ kind: 'set up' } & SetUpWork)
  | ({ kind: 'packed' } & PackWork);
