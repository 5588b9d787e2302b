import type { Order } from '../../../shared/order.ts';
import type { TemperatureStep } from '../../../shared/temperature.ts';
import { dateOfDay, minuteOf, type Weekday, weekdayOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { type Session, sessionsOf } from '../calendar/sessions.ts';
import { ageRate } from '../cure/age.ts';
import { climateOf } from '../cure/climate.ts';
import { compile } from '../decoder/compile.ts';
import { decode } from '../decoder/decode.ts';
import { type DecoderState, decoderStateOf } from '../decoder/decoder-state.ts';
import { dispatchOf } from '../decoder/dispatch.ts';
import { TRIED_CHOICES } from '../search/quick.ts';

/** What a session makes once the yard is in its stride. */
export interface UsualSession {
  weekday: Weekday;
  /** Pieces poured in it. */
  pieces: number;
  /** The most pours that one mould gets in it. */
  turns: number;
}

/** Long enough for a weekly session to come six times; longer where sessions are rarer. */
const DAYS_TRIED = [42, 168, 732];
const SESSIONS_WANTED = 6;
/** No yard of a few people pours more in one session; keeps the trial short. */
const MOST_WANTED = 1200;

const sessionsIn = (yard: YardFile, horizonDays: number): Session[] =>
  sessionsOf({ ...yard, yard: { ...yard.yard, horizonDays } }, calendarOf(yard.yard.timeZone)).filter((session) =>
    session.windows.some(({ allows }) => allows.includes('batch')),
  );

/** Minutes that a turn takes a mould at the least, of any mix at the warmest expected. */
const shortestTurn = ({ mixes, castings, temperatures }: YardFile): number => {
  const turns = castings.flatMap((casting) => {
    const mix = mixes.find(({ id }) => id === casting.mix);
    if (!mix) return [];
    const celsius = Math.max(
      ...(temperatures.length > 0 ? temperatures.map((step) => step.celsius) : [mix.referenceCelsius]),
    );
    const rate = ageRate(celsius, mix.activationKelvin, mix.referenceCelsius);
    return [mix.demouldMinutes / rate + casting.fillMinutes + casting.stripMinutes + mix.mixMinutes];
  });
  return Math.max(1, Math.min(...turns));
};

/** Rounds of every length, as many as it has moulds in each, until there are more than the sessions can make. */
const wantedOf = (yard: YardFile, sessions: readonly Session[]): Order[] => {
  const most = sessions.reduce((sum, { from, to }) => sum + 1 + Math.floor((to - from) / shortestTurn(yard)), 0);
  const rounds = Math.max(1, Math.min(most, Math.ceil(MOST_WANTED / yard.moulds.length)));
  return Array.from({ length: rounds }, (_, round) =>
    yard.castings.flatMap(({ id }): Order[] => {
      const quantity = yard.moulds.filter(({ setFor }) => setFor === id).length;
      return quantity === 0 ? [] : [{ id: `${round} ${id}`, weight: 1, lines: [{ casting: id, quantity }] }];
    }),
  ).flat();
};

/** All days are like today: a usual session is one of this time of the year. */
const asNow = (yard: YardFile): TemperatureStep[] => {
  const calendar = calendarOf(yard.yard.timeZone);
  const day = calendar.dayOf(minuteOf(yard.yard.now));
  const celsius = climateOf(yard, calendar).celsiusOn(day);
  return celsius === null ? [] : [{ from: dateOfDay(day), celsius }];
};

/** The yard with nothing in hand, nothing fixed, all it needs at hand and that much wanted. */
const tried = (yard: YardFile, sessions: readonly Session[], horizonDays: number): YardFile => {
  const { keep: _keep, weather: _weather, ...rest } = yard;
  return {
    ...rest,
    yard: { ...yard.yard, horizonDays },
    ...{ materials: [], incoming: [], kits: [], finished: [], inMould: [] },
    mixes: yard.mixes.map((mix) => ({ ...mix, perBag: [] })),
    castings: yard.castings.map((casting) => ({ ...casting, perPiece: [], cuts: [], sheets: [] })),
    temperatures: asNow(yard),
    orders: wantedOf(yard, sessions),
  };
};

/** The ways of working that are tried; the one that makes most is the maker's. */
const WAYS = TRIED_CHOICES.slice(0, 4);

/** The moulds poured in a session, once a pour. */
const poursIn = ({ placed }: DecoderState, { start, end }: Session): number[] =>
  Array.from(placed.pourMould.subarray(0, placed.pours)).filter((_, pour) => {
    const filled = placed.pourFillStart[pour]!;
    return filled >= start && filled < end;
  });

/** The most pours that one mould gets. */
const mostTurns = (moulds: readonly number[]): number => {
  const turns = new Map<number, number>();
  for (const mould of moulds) turns.set(mould, (turns.get(mould) ?? 0) + 1);
  return Math.max(0, ...turns.values());
};

/** The sessions of one kind without the first, for which every mould is empty, and the last, for which time runs out. */
const steadyOf = (all: readonly Session[]): readonly Session[] => (all.length > 3 ? all.slice(1, -1) : all.slice(-1));

const usualOf = (state: DecoderState, sessions: readonly Session[]): UsualSession => {
  const pours = steadyOf(sessions).map((session) => poursIn(state, session));
  const pieces = Math.round(pours.reduce((sum, { length }) => sum + length, 0) / pours.length);
  return { weekday: weekdayOf(sessions[0]!.day), pieces, turns: Math.max(...pours.map(mostTurns)) };
};

/** Sessions of one weekday that begin at the same time of day. */
const byKind = (yard: YardFile, sessions: readonly Session[]): Session[][] => {
  const calendar = calendarOf(yard.yard.timeZone);
  const kinds = new Map<string, Session[]>();
  for (const session of sessions) {
    const kind = `${weekdayOf(session.day)} ${session.start - calendar.midnightOf(session.day)}`;
    kinds.set(kind, [...(kinds.get(kind) ?? []), session]);
  }
  return [...kinds.values()];
};

/**
 * What a usual session makes by a yard's figures: the yard is planned with more of every length wanted than it can make and
 * all it needs at hand, and the sessions are counted for which moulds come filled from the one before: their mean. Of
 * several kinds of session, the one that makes most. Null where no session allows a batch or there is nothing to cast. The
 * yard's own orders, stock and pieces play no part.
 *
 * Example: two moulds, Saturdays for four hours, stripped after 75 minutes: those filled last time are stripped, set up and
 * filled, and once more after 75 minutes: 4 pieces in 2 turns.
 */
export const usualSession = (yard: YardFile): UsualSession | null => {
  if (yard.castings.length === 0 || yard.moulds.length === 0) return null;
  const enough = DAYS_TRIED.find((days) => sessionsIn(yard, days).length >= SESSIONS_WANTED);
  const horizonDays = enough ?? DAYS_TRIED.at(-1)!;
  const sessions = sessionsIn(yard, horizonDays);
  if (sessions.length === 0) return null;
  const state = decoderStateOf(compile(tried(yard, sessions, horizonDays)), dispatchOf(new Int32Array(0)));
  const sequence = Int32Array.from(state.problem.orders.keys());
  const kinds = byKind(yard, sessions);
  const usual = WAYS.flatMap((choices) => {
    decode(state, dispatchOf(sequence, choices));
    return kinds.map((kind) => usualOf(state, kind));
  });
  return usual.reduce((best, one) => (one.pieces > best.pieces ? one : best));
};
