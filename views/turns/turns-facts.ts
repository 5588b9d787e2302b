export interface TurnFacts {
  id: string;
  mould: string;
  piece: string;
  /** Null: for stock. */
  customer: string | null;
  pouredAt: string;
  mayFrom: string;
  /** Null: by the plan it stays in the mould. */
  strippedAt: string | null;
  readyAt: string | null;
  pourSession: number | null;
  stripSession: number | null;
}

export interface MouldTurns {
  mould: string;
  /** Until: the day it should be mended; null when nobody knows. */
  outOfUse: { until: string | null } | null;
  turns: readonly TurnFacts[];
}

export interface TurnsModel {
  today: string;
  sessions: readonly { date: string; start: string; end: string }[];
  moulds: readonly MouldTurns[];
}
