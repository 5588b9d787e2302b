/** A thing counted in the words of the yard, as it stands in a calendar. `unit` is '' for what is counted. */
export interface CountedThing {
  name: string;
  quantity: number;
  unit: string;
}

/** What a calendar has of a session: which moulds are filled for whom, and how many pieces come out. */
export interface SessionEntry {
  kind: 'session';
  key: string;
  /** Instants. */
  start: string;
  end: string;
  pours: { mould: string; piece: string; customer: string | null }[];
  strips: number;
}

/** The day that a customer was told, or that is held for one. */
export interface OrderEntry {
  kind: 'order';
  key: string;
  on: string;
  order: string;
  /** A walk-in's is not recorded. */
  customer: string | null;
  contents: CountedThing[];
  /** The last day of a hold; null for a date that is promised. */
  heldUntil: string | null;
  /** By the plan of then; null where it could not be made. */
  readyOn: string | null;
}

/** All that has to be ordered by one day. */
export interface PurchasesEntry {
  kind: 'purchases';
  key: string;
  on: string;
  things: CountedThing[];
}

/** One thing that stands in the calendar. Its key stays the same while it is the same thing, whatever moves. */
export type CalendarEntry = SessionEntry | OrderEntry | PurchasesEntry;

/** An entry as it was last given out, and how often it was another one before (SEQUENCE, RFC 5545 3.8.7.4). */
export interface CalendarEvent {
  entry: CalendarEntry;
  sequence: number;
  /** When it became what it is. */
  changedAt: string;
  isCancelled: boolean;
}
