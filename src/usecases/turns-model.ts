import type { PlanFile } from '../../shared/plan.ts';
import { dateOfDay, type Minute, minuteOf } from '../../shared/time.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { calendarOf } from '../engine/work/calendar.ts';
import { type Session, sessionsOf } from '../engine/work/sessions.ts';
import { settingOf } from './setting.ts';

/** One use of a mould: a piece is poured, sets in it, and is stripped. */
export interface Turn {
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

const customerOf = (yard: YardFile, order: string | undefined): string | null =>
  order === undefined ? null : (yard.orders.find(({ id }) => id === order)?.customer ?? `order ${order}`);

const pieceOf = (yard: YardFile, casting: string): string =>
  yard.castings.find(({ id }) => id === casting)?.name ?? casting;

/** Sessions in which a mould is filled or stripped, in order of time. */
const sessionsWithTurns = (yard: YardFile, plan: PlanFile): Session[] => {
  const at = [
    ...plan.pours.map(({ fillStart }) => fillStart),
    ...[...plan.pours, ...plan.strips].map(({ stripStart }) => stripStart),
  ].map(minuteOf);
  return sessionsOf(yard, calendarOf(yard.yard.timeZone)).filter(({ start, end }) =>
    at.some((minute) => minute >= start && minute < end),
  );
};

const turnsOf = (yard: YardFile, plan: PlanFile, sessions: readonly Session[]): Turn[] => {
  const calendar = calendarOf(yard.yard.timeZone);
  const setting = settingOf(yard);
  const placeOf = (instant: string): number | null => {
    const minute = minuteOf(instant);
    const place = sessions.findIndex(({ start, end }) => minute >= start && minute < end);
    return place < 0 ? null : place;
  };
  const mayFrom = (casting: string, filled: Minute) => calendar.instantText(setting.mayStripFrom(casting, filled));
  const planned = plan.pours.map(
    (pour): Turn => ({
      id: pour.id,
      ...{ mould: pour.mould, piece: pieceOf(yard, pour.casting), customer: customerOf(yard, pour.order) },
      ...{ pouredAt: pour.fillStart, mayFrom: mayFrom(pour.casting, minuteOf(pour.fillEnd)) },
      ...{ strippedAt: pour.stripStart, readyAt: pour.pieceReadyAt },
      ...{ pourSession: placeOf(pour.fillStart), stripSession: placeOf(pour.stripStart) },
    }),
  );
  const inMoulds = yard.inMould.map((piece): Turn => {
    const strip = plan.strips.find(({ mould }) => mould === piece.mould);
    return {
      id: `in-${yard.moulds.findIndex(({ id }) => id === piece.mould)}`,
      ...{
        mould: piece.mould,
        piece: pieceOf(yard, piece.casting),
        customer: customerOf(yard, strip?.order ?? piece.order),
      },
      pouredAt: calendar.instantText(minuteOf(piece.filledAt)),
      mayFrom: mayFrom(piece.casting, minuteOf(piece.filledAt)),
      ...{ strippedAt: strip?.stripStart ?? null, readyAt: strip?.pieceReadyAt ?? null },
      ...{ pourSession: null, stripSession: strip ? placeOf(strip.stripStart) : null },
    };
  });
  // A stored plan may have pours of a session that is over: nothing of them is left to show.
  const shown = [...inMoulds, ...planned.filter(({ pourSession }) => pourSession !== null)];
  return shown.sort((a, b) => minuteOf(a.pouredAt) - minuteOf(b.pouredAt));
};

/** Sessions with their turns, mould by mould as the maker lists them. Scrapped moulds are left out. */
export const turnsModel = (yard: YardFile, plan: PlanFile) => {
  const calendar = calendarOf(yard.yard.timeZone);
  const sessions = sessionsWithTurns(yard, plan);
  const turns = turnsOf(yard, plan, sessions);
  return {
    sessions: sessions.map(({ day, start, end }) => ({
      date: dateOfDay(day),
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
