import type { ToMendFacts } from '../../src/usecases/orders/to-mend-facts.ts';
import type { FixedFacts } from '../../src/usecases/today/fixed-facts.ts';

export type { ToMendFacts };

export interface AmountFacts {
  name: string;
  unit: string;
  quantity: number;
}

/** An ingredient of a batch; `measured` is how it is measured out ("180 ml"), null where it is counted. */
export interface IngredientFacts extends AmountFacts {
  measured: string | null;
}

export interface CutFacts {
  name: string;
  /** In the yard's units. */
  length: string;
  count: number;
}

interface Timed {
  at: string;
  until: string;
}

interface EdgeStep extends Timed {
  kind: 'set up' | 'clear up';
}

export interface PrepStep extends Timed {
  kind: 'prep';
  mould: string;
  casting: string;
  piece: string;
  clean: boolean;
  seal: boolean;
  /** What it is set for now, where that is another piece. */
  changeFrom: string | null;
  dryMinutes: number;
  /** A turn comes before it: a piece is in the mould still, or is to be poured first. */
  waits: boolean;
}

export interface PourFacts extends Timed {
  mould: string;
  casting: string;
  piece: string;
  sealed: boolean;
  order: string | null;
  /** Null: for stock. */
  customer: string | null;
}

export interface BatchStep extends Timed {
  kind: 'batch';
  mixEnd: string;
  mix: string;
  bags: number;
  ingredients: readonly IngredientFacts[];
  /** For all of it, measured out; null where nobody said how much. */
  water: string | null;
  /** What is written down of the water in place of an amount. */
  waterNote: string | null;
  fittings: readonly AmountFacts[];
  cuts: readonly CutFacts[];
  usableUntil: string;
  wetUntil: string | null;
  pours: readonly PourFacts[];
  /** A turn of one of its moulds comes before it. */
  waits: boolean;
}

export interface StripStep extends Timed {
  kind: 'strip';
  mould: string;
  piece: string;
  customer: string | null;
  mayFrom: string;
  people: number;
  /** It is in the mould, not only to be poured by the plan. */
  inMould: boolean;
}

export interface PackStep extends Timed {
  kind: 'pack';
  order: string;
  customer: string;
  contents: readonly AmountFacts[];
  parts: readonly AmountFacts[];
  cuts: readonly CutFacts[];
}

export type Step = EdgeStep | PrepStep | BatchStep | StripStep | PackStep;

/** A step of a session that is over, with a name of its own. */
export interface LateLine {
  name: string;
  step: Step;
}

export interface SessionHours {
  date: string;
  start: string;
  end: string;
  windows: readonly { start: string; end: string; crew: number }[];
}

export interface FullMould {
  mould: string;
  piece: string;
  customer: string | null;
  filledAt: string;
  mayFrom: string;
  planned: string | null;
}

export interface EmptyMould {
  mould: string;
  setFor: string;
  makes: readonly { casting: string; piece: string }[];
}

export interface TodayModel {
  today: string;
  now: string;
  session: SessionHours | null;
  underWay: boolean;
  fixed: FixedFacts;
  /** Hours of today in which nothing is planned. */
  idle: SessionHours | null;
  steps: readonly Step[];
  /** Planned for a session that is over, not written down, and kept as planned until then; null for nothing. */
  late: { until: string; lines: readonly LateLine[] } | null;
  lastMix: readonly { mix: string; at: string }[];
  otherFull: readonly FullMould[];
  emptyMoulds: readonly EmptyMould[];
  orders: readonly { order: string; customer: string }[];
  packed: readonly { order: string; customer: string }[];
  /** Stripped, not good, and kept aside. */
  toMend: readonly ToMendFacts[];
  done: readonly { change: number; at: string; words: string }[];
  hoursChanged: readonly { change: number; words: string; date: string }[];
}
