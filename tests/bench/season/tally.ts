/** A customer's order, from the question to the hand-over, as the customer sees it. */
export interface Promised {
  id: string;
  customer: string;
  takenOn: string;
  /** Days from the question to the day told. */
  quotedDays: number;
  promisedOn: string;
  /** The day it was packed, or could have been fetched without packing. */
  readyOn: string | null;
  /** Taken in the season; those that were there before are worked for and fetched, and not counted. */
  isCounted: boolean;
  isGone: boolean;
  isCancelled: boolean;
  /** Since when the plan has shown it late without a break, with what was done then; null while it is in time. */
  lateSince: { on: string; act: string; avoidable: boolean } | null;
}

/** A promise of which nothing has come yet. */
export const openPromise = (
  facts: Pick<Promised, 'id' | 'customer' | 'takenOn' | 'promisedOn' | 'quotedDays' | 'isCounted'>,
): Promised => ({ ...facts, readyOn: null, isGone: false, isCancelled: false, lateSince: null });

/** How a season ended with one planner: what the table prints. */
export interface SeasonTally {
  yard: string;
  orders: number;
  due: number;
  kept: number;
  toldNo: number;
  falseNo: number;
  quotedDays: number[];
  /** For each miss that was shown: days from then to the promised day. */
  tellingDays: number[];
  /** Misses that a plan made from nothing would have kept on the day they were first shown. */
  avoidable: number;
  /** Alarms that were taken back: shown late, and in time again later. */
  alarms: number;
  /** Orders whose planned day came nearer without an event. */
  forward: number;
  /** Orders whose planned day got later without an event, by kind of act, and by how many days in all. */
  moves: Record<string, number>;
  movedDays: number;
  nights: number;
  /** Pours of the next session that were others in the morning than in the evening. */
  changedPours: number;
  audits: number;
  auditFaults: number;
  auditWords: Record<string, number>;
  /** Steps under way that were gone from Today after something else was done. */
  vanished: number;
  lateTaps: number;
  /** Lines of late work that were said not to be done, since they could not be. */
  givenUp: number;
  refused: { act: string; words: string; at: string; status: number }[];
  misses: string[];
  /** Orders of a material that were placed, and ways to suppliers that they took: what was bought of one on a day is one. */
  bought: number;
  ways: number;
  /** Cuts of which the book had no stick or sheet, and takings of bags past their date. */
  cutsOfNone: number;
  pastDate: number;
  days: number;
  /** Of a processor. */
  seconds: number;
  searches: number;
}

export const emptyTally = (yard: string): SeasonTally => ({
  ...{ yard, orders: 0, due: 0, kept: 0, toldNo: 0, falseNo: 0, quotedDays: [], tellingDays: [], avoidable: 0 },
  ...{
    alarms: 0,
    forward: 0,
    moves: {},
    movedDays: 0,
    nights: 0,
    changedPours: 0,
    audits: 0,
    auditFaults: 0,
    auditWords: {},
  },
  ...{
    vanished: 0,
    lateTaps: 0,
    givenUp: 0,
    refused: [],
    misses: [],
    seconds: 0,
    searches: 0,
    bought: 0,
    ways: 0,
    days: 0,
  },
  ...{ cutsOfNone: 0, pastDate: 0 },
});
