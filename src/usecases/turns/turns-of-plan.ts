import type { PlanFile, PlanPour, PlanStrip } from '../../../shared/plan.ts';
import { dateOfDay, type Minute, minuteOf, type Weekday } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { curingTimesOf } from '../../engine/book/curing-times.ts';
import { isOut, isOutForGood, isRetired } from '../../engine/book/mould-state.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { type Session, sessionsOf } from '../../engine/calendar/sessions.ts';
import { pourMinutes } from '../plan/pour-minutes.ts';
import { weekOf } from '../typed/measures.ts';

/** One use of a mould: a piece is poured, sets in it, and is stripped. */
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
  /** Place of its session in the list of sessions; null: it was poured before the first of them. */
  pourSession: number | null;
  /** Null: in none of the sessions. */
  stripSession: number | null;
}

/** Names by id: of a piece its own, of an order its customer's; null where there is no order. */
interface Names {
  customer(order: string | undefined): string | null;
  piece(casting: string): string;
}

const namesOf = (yard: YardFile): Names => {
  const customers = new Map(yard.orders.map(({ id, customer }) => [id, customer]));
  const pieces = new Map(yard.castings.map(({ id, name }) => [id, name]));
  return {
    customer: (order: string | undefined): string | null =>
      order === undefined ? null : (customers.get(order) ?? `order ${order}`),
    piece: (casting: string): string => pieces.get(casting) ?? casting,
  };
};

/** The place in a list of sessions, one after another in time, of the one a minute lies in; null for none. */
const placeIn = (sessions: readonly Session[], minute: Minute): number | null => {
  let [low, high] = [0, sessions.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sessions[middle]!.end <= minute) low = middle + 1;
    else high = middle;
  }
  return low < sessions.length && sessions[low]!.start <= minute ? low : null;
};

/** Sessions in which a mould is filled or stripped, in order of time, and in which of them each pour of the plan is. */
interface SessionsWithTurns {
  sessions: readonly Session[];
  /** In the order of the plan's pours; null: in none of the sessions. */
  pourSessions: readonly (number | null)[];
  stripSessions: readonly (number | null)[];
}

const sessionsWithTurns = (yard: YardFile, plan: PlanFile): SessionsWithTurns => {
  const all = sessionsOf(yard, calendarOf(yard.yard.timeZone));
  const placesOf = (minutes: Iterable<Minute>) => Array.from(minutes, (minute) => placeIn(all, minute));
  const filled = placesOf(pourMinutes(plan, 'fillStart'));
  const stripped = placesOf(pourMinutes(plan, 'stripStart'));
  const others = placesOf(plan.strips.map(({ stripStart }) => minuteOf(stripStart)));
  const used = [...new Set([...filled, ...stripped, ...others])]
    .filter((place) => place !== null)
    .sort((a, b) => a - b);
  const among = new Map<number | null, number>(used.map((place, index) => [place, index]));
  const amongUsed = (places: readonly (number | null)[]) => places.map((place) => among.get(place) ?? null);
  const sessions = used.map((place) => all[place]!);
  return { sessions, pourSessions: amongUsed(filled), stripSessions: amongUsed(stripped) };
};

/** Sessions that are looked at: so many, from a place in the list of all on. */
export interface SessionsAsked {
  from: number;
  count: number;
}

type Placed = Pick<TurnFacts, 'pourSession' | 'stripSession'>;

/** Whether a turn touches the sessions that are looked at; any does where none are named. */
const touches = (asked: SessionsAsked | null, sessions: number): ((turn: Placed) => boolean) => {
  if (asked === null) return () => true;
  const first = Math.max(0, Math.min(asked.from, sessions - 1));
  return ({ pourSession, stripSession }) =>
    (pourSession ?? -1) < first + asked.count && (stripSession ?? Number.POSITIVE_INFINITY) >= first;
};

/** What turns are made from, all of them or those of the sessions that are looked at. */
interface PlacedTurns {
  pours: readonly (Placed & { pour: PlanPour })[];
  /** Pieces that are in their moulds now; no strip: by the plan they stay. */
  inMoulds: readonly (Placed & { piece: YardFile['inMould'][number]; strip: PlanStrip | undefined })[];
  /** Every mould with a turn, looked at or not. */
  moulds: ReadonlySet<string>;
}

const placedTurns = (
  yard: YardFile,
  plan: PlanFile,
  { sessions, pourSessions, stripSessions }: SessionsWithTurns,
  asked: SessionsAsked | null,
): PlacedTurns => {
  const placeOf = (instant: string): number | null => placeIn(sessions, minuteOf(instant));
  const strips = new Map(plan.strips.map((strip) => [strip.mould, strip]));
  const isAsked = touches(asked, sessions.length);
  // A plan may have work of a session that is over and is not written down yet: of a turn that ended in it nothing is
  // left to show, and a piece poured in it is in its mould.
  const ahead = plan.pours.filter((_, place) => pourSessions[place] !== null || stripSessions[place] !== null);
  const pours = plan.pours.flatMap((pour, place) => {
    const placed = { pourSession: pourSessions[place] ?? null, stripSession: stripSessions[place] ?? null };
    const isShown = (placed.pourSession !== null || placed.stripSession !== null) && isAsked(placed);
    return isShown ? [{ pour, ...placed }] : [];
  });
  const inMoulds = yard.inMould
    .map((piece) => {
      const strip = strips.get(piece.mould);
      return { piece, strip, pourSession: null, stripSession: strip ? placeOf(strip.stripStart) : null };
    })
    .filter(({ strip, stripSession }) => strip === undefined || stripSession !== null);
  const moulds = new Set([...ahead, ...inMoulds.map(({ piece }) => piece)].map(({ mould }) => mould));
  return { pours, inMoulds: inMoulds.filter(isAsked), moulds };
};

const turnsOf = (yard: YardFile, { pours, inMoulds }: PlacedTurns): TurnFacts[] => {
  const calendar = calendarOf(yard.yard.timeZone);
  const curing = curingTimesOf(yard);
  const names = namesOf(yard);
  const places = new Map(yard.moulds.map(({ id }, place) => [id, place]));
  const mayFrom = (casting: string, filled: Minute) => calendar.instantText(curing.mayStripFrom(casting, filled));
  const planned = pours.map(
    ({ pour, ...placed }): TurnFacts => ({
      id: pour.id,
      ...{ mould: pour.mould, piece: names.piece(pour.casting), customer: names.customer(pour.order) },
      ...{ pouredAt: pour.fillStart, mayFrom: mayFrom(pour.casting, minuteOf(pour.fillEnd)) },
      ...{ strippedAt: pour.stripStart, readyAt: pour.pieceReadyAt, ...placed },
    }),
  );
  const now = inMoulds.map(({ piece, strip, ...placed }): TurnFacts => {
    const customer = names.customer(strip?.order ?? piece.order);
    return {
      id: `in-${places.get(piece.mould)}`,
      ...{ mould: piece.mould, piece: names.piece(piece.casting), customer },
      pouredAt: calendar.instantText(minuteOf(piece.filledAt)),
      mayFrom: mayFrom(piece.casting, minuteOf(piece.filledAt)),
      ...{ strippedAt: strip?.stripStart ?? null, readyAt: strip?.pieceReadyAt ?? null, ...placed },
    };
  });
  return [...now, ...planned]
    .map((turn) => ({ turn, at: minuteOf(turn.pouredAt) }))
    .sort((a, b) => a.at - b.at)
    .map(({ turn }) => turn);
};

const byMould = (turns: readonly TurnFacts[]): ReadonlyMap<string, TurnFacts[]> => {
  const moulds = new Map<string, TurnFacts[]>();
  for (const turn of turns)
    moulds
      .set(turn.mould, moulds.get(turn.mould) ?? [])
      .get(turn.mould)!
      .push(turn);
  return moulds;
};

/** One mould with its turns, in order of time. */
export interface MouldTurns {
  mould: string;
  /** Until: the day it should be mended; null when nobody knows. */
  outOfUse: { until: string | null } | null;
  turns: readonly TurnFacts[];
}

/** A session that turns begin or end in. */
interface TurnsSession {
  date: string;
  /** The first day of the yard's week that it is in. */
  week: string;
  start: string;
  end: string;
}

/** Sessions with their turns, mould by mould as the maker lists them. */
export interface TurnsOfPlan {
  sessions: readonly TurnsSession[];
  moulds: readonly MouldTurns[];
}

/**
 * What a plan does with the moulds of a yard: in all sessions, or with the turns of some alone, beside which all the other
 * sessions are named. Scrapped moulds are left out.
 */
export const turnsOfPlan = (
  yard: YardFile,
  plan: PlanFile,
  weekStart: Weekday,
  asked: SessionsAsked | null = null,
): TurnsOfPlan => {
  const calendar = calendarOf(yard.yard.timeZone);
  const used = sessionsWithTurns(yard, plan);
  const placed = placedTurns(yard, plan, used, asked);
  const turns = byMould(turnsOf(yard, placed));
  return {
    sessions: used.sessions.map(({ day, start, end }) => ({
      ...{ date: dateOfDay(day), week: weekOf(dateOfDay(day), weekStart) },
      start: calendar.instantText(start),
      end: calendar.instantText(end),
    })),
    moulds: yard.moulds
      .filter((mould) => !isRetired(mould) || placed.moulds.has(mould.id))
      .map((mould) => ({
        mould: mould.id,
        outOfUse: isOut(mould) ? { until: isOutForGood(mould) ? null : (mould.repairedOn ?? null) } : null,
        turns: turns.get(mould.id) ?? [],
      })),
  };
};
