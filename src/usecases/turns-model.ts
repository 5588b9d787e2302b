import type { PlanFile } from '../../shared/plan.ts';
import { dateOfDay, type Minute, minuteOf, type Weekday } from '../../shared/time.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { calendarOf } from '../engine/work/calendar.ts';
import { type Session, sessionsOf } from '../engine/work/sessions.ts';
import { weekOf } from './measures.ts';
import { settingOf } from './setting.ts';

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

/** Names by id: of a piece its own, of an order its customer's. */
const namesOf = (yard: YardFile) => {
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

/** Sessions in which a mould is filled or stripped, in order of time. */
const sessionsWithTurns = (yard: YardFile, plan: PlanFile): Session[] => {
  const all = sessionsOf(yard, calendarOf(yard.yard.timeZone));
  const instants = [
    ...plan.pours.map(({ fillStart }) => fillStart),
    ...[...plan.pours, ...plan.strips].map(({ stripStart }) => stripStart),
  ];
  const used = new Set(instants.map((instant) => placeIn(all, minuteOf(instant))));
  return all.filter((_, place) => used.has(place));
};

const turnsOf = (yard: YardFile, plan: PlanFile, sessions: readonly Session[]): TurnFacts[] => {
  const calendar = calendarOf(yard.yard.timeZone);
  const setting = settingOf(yard);
  const names = namesOf(yard);
  const strips = new Map(plan.strips.map((strip) => [strip.mould, strip]));
  const placeOf = (instant: string): number | null => placeIn(sessions, minuteOf(instant));
  const mayFrom = (casting: string, filled: Minute) => calendar.instantText(setting.mayStripFrom(casting, filled));
  const planned = plan.pours.map(
    (pour): TurnFacts => ({
      id: pour.id,
      ...{ mould: pour.mould, piece: names.piece(pour.casting), customer: names.customer(pour.order) },
      ...{ pouredAt: pour.fillStart, mayFrom: mayFrom(pour.casting, minuteOf(pour.fillEnd)) },
      ...{ strippedAt: pour.stripStart, readyAt: pour.pieceReadyAt },
      ...{ pourSession: placeOf(pour.fillStart), stripSession: placeOf(pour.stripStart) },
    }),
  );
  const inMoulds = yard.inMould.map((piece): TurnFacts => {
    const strip = strips.get(piece.mould);
    return {
      id: `in-${yard.moulds.findIndex(({ id }) => id === piece.mould)}`,
      ...{
        mould: piece.mould,
        piece: names.piece(piece.casting),
        customer: names.customer(strip?.order ?? piece.order),
      },
      pouredAt: calendar.instantText(minuteOf(piece.filledAt)),
      mayFrom: mayFrom(piece.casting, minuteOf(piece.filledAt)),
      ...{ strippedAt: strip?.stripStart ?? null, readyAt: strip?.pieceReadyAt ?? null },
      ...{ pourSession: null, stripSession: strip ? placeOf(strip.stripStart) : null },
    };
  });
  // A stored plan may have pours of a session that is over: nothing of them is left to show.
  const shown = [...inMoulds, ...planned.filter(({ pourSession }) => pourSession !== null)];
  return shown
    .map((turn) => ({ turn, at: minuteOf(turn.pouredAt) }))
    .sort((a, b) => a.at - b.at)
    .map(({ turn }) => turn);
};

/** One mould with its turns, in order of time. */
export interface MouldTurns {
  mould: string;
  /** Until: the day it should be mended; null when nobody knows. */
  outOfUse: { until: string | null } | null;
  turns: readonly TurnFacts[];
}

/** Sessions with their turns, mould by mould as the maker lists them. */
export interface TurnsModel {
  /** Week: the first day of the yard's week that the session is in. */
  sessions: readonly { date: string; week: string; start: string; end: string }[];
  moulds: readonly MouldTurns[];
}

/** What a plan does with the moulds of a yard. Scrapped moulds are left out. */
export const turnsModel = (yard: YardFile, plan: PlanFile, weekStart: Weekday): TurnsModel => {
  const calendar = calendarOf(yard.yard.timeZone);
  const sessions = sessionsWithTurns(yard, plan);
  const turns = turnsOf(yard, plan, sessions);
  return {
    sessions: sessions.map(({ day, start, end }) => ({
      ...{ date: dateOfDay(day), week: weekOf(dateOfDay(day), weekStart) },
      start: calendar.instantText(start),
      end: calendar.instantText(end),
    })),
    moulds: yard.moulds
      .filter(({ id, condition }) => condition !== 'retired' || turns.some(({ mould }) => mould === id))
      .map(({ id, condition, repairedOn }) => ({
        mould: id,
        outOfUse:
          condition === 'damaged' || condition === 'retired'
            ? { until: condition === 'damaged' ? (repairedOn ?? null) : null }
            : null,
        turns: turns.filter(({ mould }) => mould === id),
      })),
  };
};
