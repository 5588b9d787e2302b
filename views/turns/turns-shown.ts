import { type ListPart, listPart } from '../../shared/list-part.ts';
import type { MouldTurns, TurnFacts, TurnsOfPlan } from '../../src/usecases/turns/turns-of-plan.ts';
import type { OutSpan, TurnSpan } from '../charts/turns-geometry.ts';

/** Sessions on one page: as many as a sheet of paper takes. */
export const SESSIONS_SHOWN = 6;

/** Sessions `from` up to, not including, `to`, which are in one week, named by its first day. */
interface WeekSpan {
  week: string;
  from: number;
  to: number;
}

/** The part of the turns that one page shows, and where each goes on its chart. */
export interface TurnsShown {
  from: number;
  sessions: TurnsOfPlan['sessions'];
  weeks: readonly WeekSpan[];
  /** Out of use only where they are so in a session shown. */
  moulds: readonly MouldTurns[];
  /** Which of the moulds these are. */
  part: ListPart<MouldTurns>;
  turns: readonly TurnFacts[];
  spans: readonly TurnSpan[];
  outs: readonly OutSpan[];
  earlierFrom: number | null;
  laterFrom: number | null;
}

/** A turn that touches sessions `from` up to `to`, counted from `from`; null when it touches none of them. */
const spanOf = (turn: TurnFacts, row: number, from: number, to: number): TurnSpan | null => {
  const pour = turn.pourSession ?? -1;
  const strip = turn.stripSession ?? Number.POSITIVE_INFINITY;
  if (pour >= to || strip < from) return null;
  return { id: turn.id, row, pour: pour < from ? null : pour - from, strip: strip >= to ? null : strip - from };
};

const weeksOf = (sessions: TurnsOfPlan['sessions']): WeekSpan[] => {
  const weeks = [...new Set(sessions.map(({ week }) => week))];
  return weeks.map((week) => {
    const from = sessions.findIndex((session) => session.week === week);
    return { week, from, to: from + sessions.filter((session) => session.week === week).length };
  });
};

/** Sessions before the day on which a mould should be mended. */
const outOf = ({ outOfUse }: MouldTurns, row: number, sessions: TurnsOfPlan['sessions']): OutSpan[] => {
  if (!outOfUse) return [];
  const { until } = outOfUse;
  const to = until === null ? sessions.length : sessions.filter(({ date }) => date < until).length;
  return to === 0 ? [] : [{ row, from: 0, to }];
};

/** Turns on one page, where there are more moulds than a page takes: a screen or three of boxes. */
const TURNS_SHOWN = 100;
/** A mould without a turn takes as much room on the page as this part of one. */
const ROW_WEIGHT = 0.3;

/** The sessions from one on, of them the moulds from one on. */
export const turnsShown = ({ sessions, moulds: all }: TurnsOfPlan, from: number, mouldsFrom = 0): TurnsShown => {
  const first = Math.max(0, Math.min(from, sessions.length - 1));
  const to = Math.min(sessions.length, first + SESSIONS_SHOWN);
  const shown = sessions.slice(first, to);
  const isShown = (turn: TurnFacts) => spanOf(turn, 0, first, to) !== null;
  const part = listPart(all, mouldsFrom, {
    most: TURNS_SHOWN,
    weigh: ({ turns }) => ROW_WEIGHT + turns.filter(isShown).length,
  });
  const moulds = part.items;
  const placed = moulds.flatMap((mould, row) =>
    mould.turns.flatMap((turn) => {
      const span = spanOf(turn, row, first, to);
      return span ? [{ turn, span }] : [];
    }),
  );
  const outs = moulds.flatMap((mould, row) => outOf(mould, row, shown));
  return {
    from: first,
    sessions: shown,
    weeks: weeksOf(shown),
    moulds: moulds.map((mould, row) => (outs.some((out) => out.row === row) ? mould : { ...mould, outOfUse: null })),
    part,
    turns: placed.map(({ turn }) => turn),
    spans: placed.map(({ span }) => span),
    outs,
    earlierFrom: first > 0 ? Math.max(0, first - SESSIONS_SHOWN) : null,
    laterFrom: to < sessions.length ? to : null,
  };
};
