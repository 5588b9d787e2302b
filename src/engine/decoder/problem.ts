import type { Minute } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import type { ComingDays } from '../buy/coming-days.ts';
import type { Gap } from '../buy/coming-gaps.ts';
import type { DatedLot, Opening } from '../buy/dated-lots.ts';
import type { Calendar } from '../calendar/calendar.ts';
import type { Ageing } from '../cure/age.ts';
import type { Climate } from '../cure/climate.ts';
import type { SheetStock } from '../cut/mesh/sheet-stock.ts';
import type { BegunWork } from './begun-work.ts';
import type { FixedWork } from './fixed-batch.ts';
import type { SheetCuts } from './open-sheets.ts';

/** No mould, casting, order or time: the index or minute that stands for "none". */
export const NONE = -1;
/** A minute later than any plan reaches. */
export const NEVER = 2_000_000_000;

/** One bit for each kind of task, as in `Shifts.allow`: setting a mould up. */
export const PREP = 1;
/** The bit of mixing and filling a batch. */
export const BATCH = 2;
/** The bit of stripping a piece. */
export const STRIP = 4;
/** The bit of packing an order. */
export const PACK = 8;

/**
 * Stretches of a session in which tasks can be placed, in order of time. A session is one shift, unless it runs for
 * longer than a long day: then it is cut at midnights, so that what is finished in it is seen day by day.
 * Minute `t` of shift `s` stands at `offset[s] + t - from[s]` of `people` and `allow`.
 */
export interface Shifts {
  count: number;
  from: Int32Array;
  to: Int32Array;
  /** End of the whole session, for someone staying after the last fill. */
  sessionEnd: Int32Array;
  day: Int32Array;
  offset: Int32Array;
  people: Uint16Array;
  allow: Uint8Array;
  /** Mixers that work under way takes. */
  mixing: Uint16Array;
  /** Next shift after this one in which pieces can be stripped, and in which orders can be packed; `count` if none. */
  nextStrip: Int32Array;
  nextPack: Int32Array;
}

/** A mix with minutes for hours, indices for ids, and its ageing at hand. */
export interface CompiledMix {
  ageing: Ageing;
  crew: number;
  mixMinutes: number;
  washMinutes: number;
  attendMinutes: number;
  workingMinutes: number;
  demouldMinutes: number;
  cureMinutes: number;
  /** Largest batch, kg placed. */
  mostKg: number;
  yieldKgPerBag: number;
  bagStep: number;
  maxBags: number;
  castings: number[];
  perBag: { material: number; quantity: number }[];
  /** From this minute on everything the mix and its castings need can be had. */
  scarceUntil: Minute;
  minCelsius: number;
  maxCelsius: number;
  protectMinutes: number;
}

/** What a material that goes past its date is known by. Lots are those on hand. */
export interface CompiledDates extends Opening {
  lots: readonly DatedLot[];
  shelfLifeDays: number | undefined;
  /** Times, once it can be bought, at which nothing bought can be there (R10); what is used is then followed for as long as the plan goes. */
  gaps: readonly Gap[];
  dayOf: (minute: number) => number;
}

/** A material as far as it can run short: quantities in its own unit, lengths in mm. */
export interface CompiledMaterial {
  /** Of sticks and sheets whole ones. */
  onHand: number;
  /** What is bought already, by the minute it is there. */
  arrivals: { at: Minute; quantity: number }[];
  /** The days on which it can come if it is ordered; null when it cannot be bought. */
  comes: ComingDays | null;
  /** From this minute on any quantity can be there; NEVER when it cannot be bought. */
  plentyFrom: Minute;
  stickMm: number;
  kerfMm: number;
  /** Rests of opened sticks, one by one, mm, the longest first. */
  offcuts: number[];
  /** No piece that is cut from it is shorter, mm. */
  usableMm: number;
  /** Null where it is not in sheets. */
  sheets: SheetStock | null;
  /** Null where nothing of it goes past its date before more can be bought. */
  dates: CompiledDates | null;
}

interface CompiledCasting {
  mix: number;
  kg: number;
  fillMinutes: number;
  stripMinutes: number;
  stripCrew: number;
  cleanMinutes: number;
  prepMinutes: number;
  rackSpaces: number;
  perPiece: { material: number; quantity: number }[];
  cuts: { material: number; lengthMm: number; count: number }[];
  sheets: SheetCuts[];
  /** Moulds that can ever take a pour of it. */
  moulds: number[];
}

/**
 * A mould with indices for castings. `usableFrom` is NEVER for one that takes no pour any more (R5); `oilEveryTurns`
 * is NEVER where no coat is ever due.
 */
export interface CompiledMould {
  makes: { casting: number; changeMinutes: number }[];
  /** By casting: minutes to change over to it, NONE when the mould does not make it. */
  change: Int32Array;
  setFor: number;
  dirty: boolean;
  prepped: boolean;
  usableFrom: Minute;
  turnsSinceOil: number;
  oilEveryTurns: number;
  oilMinutes: number;
  oilDryMinutes: number;
}

/**
 * An order with all its lines added up, kits taken apart. `dueDay` is NEVER without a date given, `wantedDay` without one
 * asked for; `aimDay` is the day given, or else the one asked for. Before `from` nothing is poured or packed for it; NONE
 * where it may be at any time.
 */
export interface CompiledOrder {
  weight: number;
  dueDay: number;
  wantedDay: number;
  aimDay: number;
  from: Minute;
  /** What is left of packing it. */
  packMinutes: number;
  /** More spells than its packing can be in; 0 for one that is packed in one go. */
  mostSpells: number;
  pieces: { casting: number; count: number }[];
  pieceCount: number;
  parts: { material: number; quantity: number }[];
  cuts: { material: number; lengthMm: number; count: number }[];
}

/** Finished pieces of one casting that are fit from one minute on, for one order or for any. */
export interface CompiledLot {
  casting: number;
  count: number;
  readyAt: number;
  order: number;
  /** Hand-over day of an order that gets its last piece here: without packing, and packed in the next session. */
  goodOn: number;
  packedOn: number;
}

/** A piece that is there: of a lot of finished ones, or in a mould. By index; NONE for the other of the two. */
interface There {
  lot: number;
  piece: number;
  readyAt: number;
}

/** What is there of each casting, the soonest ready first, and the lots that are not ready yet, likewise. */
export interface PiecesThere {
  byCasting: There[][];
  lateLots: number[];
}

/** An order none of whose pieces is poured before a shift; never where there is no such shift. */
export interface Hold {
  order: number;
  shift: number;
}

/** The sessions of a yard, in order of time, as orders are packed in them. */
export interface PackingHours {
  starts: Float64Array;
  /** The longest stretch for packing in each, as far as it is still to come, in minutes. */
  longest: Int32Array;
  /** The hand-over day of what is packed in each. */
  handover: Int32Array;
  /** By shift: the session it is of. */
  ofShift: Int32Array;
  /** The least and the most of `longest`. */
  least: number;
  most: number;
  horizonEnd: Minute;
}

/** A yard file made ready for the decoder: indices for ids, minutes for instants, one flat array for all minutes worked. */
export interface Problem {
  yard: YardFile;
  calendar: Calendar;
  climate: Climate;
  now: Minute;
  today: number;
  horizonEnd: Minute;
  mixers: number;
  rackSpaces: number;
  shifts: Shifts;
  /** Which packings are begun in spells, and when (R11). */
  packing: PackingHours;
  materials: CompiledMaterial[];
  mixes: CompiledMix[];
  castings: CompiledCasting[];
  moulds: CompiledMould[];
  orders: CompiledOrder[];
  /** By order: the first minute after the day it is aimed at, NEVER without one. */
  aimMinutes: Int32Array;
  /** Orders whose first day is still to come. */
  holds: readonly Hold[];
  /** Some order has a first day, come already or not. */
  isAnyFrom: boolean;
  finished: CompiledLot[];
  /** `isBegun`: a batch under way fills the mould. It is dealt and stripped as a pour of the plan. */
  inMould: { mould: number; casting: number; filledAt: Minute; order: number; isBegun: boolean }[];
  /** Finished pieces and pieces in moulds by casting, by when they are ready. */
  there: PiecesThere;
  /** What is under way at `now` (R14), batches apart: those are in `fixed`. */
  begun: BegunWork;
  /** First hand-over day on or after `today + i`. */
  handover: Int32Array;
  /** What is fixed (R13). */
  fixed: FixedWork;
  /** All of a plan that stands is kept, not only what is fixed: whom pieces go to may be another than by that plan. */
  isStanding?: boolean;
  batchWorthDays: number;
  bagWorthDays: number;
}
