import { type PlanFile, spellsOf } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { isOutForGood } from '../../engine/book/mould-state.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { type Session, sessionsOf } from '../../engine/calendar/sessions.ts';

/** A session by how much of it is spoken for. */
export interface SessionAhead {
  date: string;
  /** Minutes of people: those that the plan has work for, and all there are between setting up and clearing up. */
  hands: { taken: number; there: number };
  /** Moulds in which a piece is poured, or lies for all of it, and all that can be used. */
  moulds: { taken: number; there: number };
}

/** Work of a number of people, half-open. */
interface Work {
  start: Minute;
  end: Minute;
  people: number;
}

const workOf = ({ batches, pours, coats, strips, orders }: PlanFile, yard: YardFile): Work[] => {
  const crews = new Map(yard.mixes.map(({ id, crew }) => [id, crew]));
  const stripCrews = new Map(yard.castings.map(({ id, stripCrew }) => [id, stripCrew]));
  const castingIn = new Map(yard.inMould.map(({ mould, casting }) => [mould, casting]));
  const work = (from: string, to: string, people = 1): Work => ({ start: minuteOf(from), end: minuteOf(to), people });
  const stripOf = (casting: string | undefined, from: string, to: string): Work =>
    work(from, to, stripCrews.get(casting ?? ''));
  return [
    ...batches.map(({ mix, start, end }) => work(start, end, crews.get(mix))),
    ...coats.map(({ start, end }) => work(start, end)),
    ...pours.map(({ prepStart, prepEnd }) => work(prepStart, prepEnd)),
    ...pours.map(({ casting, stripStart, stripEnd }) => stripOf(casting, stripStart, stripEnd)),
    ...strips.map(({ mould, stripStart, stripEnd }) => stripOf(castingIn.get(mould), stripStart, stripEnd)),
    ...orders.flatMap((order) => spellsOf(order).map(({ packStart, packEnd }) => work(packStart, packEnd))),
  ];
};

/** From when to when a mould is full, half-open. */
interface Full {
  mould: string;
  from: Minute;
  to: Minute;
}

const fullOf = ({ pours, strips }: PlanFile, { inMould }: YardFile): Full[] => {
  const out = new Map(strips.map(({ mould, stripStart }) => [mould, minuteOf(stripStart)]));
  return [
    ...inMould.map(({ mould }) => ({ mould, from: Number.NEGATIVE_INFINITY, to: out.get(mould) ?? Infinity })),
    ...pours.map(({ mould, fillStart, stripStart }) => ({
      ...{ mould, from: minuteOf(fillStart), to: minuteOf(stripStart) },
    })),
  ];
};

const within = (from: Minute, to: Minute, { start, end }: { start: Minute; end: Minute }): number =>
  Math.max(0, Math.min(to, end) - Math.max(from, start));

/** Whether a piece is poured in it in the session, or takes the mould for all of it. */
const takesMould = ({ from, to }: Full, { start, end }: Session): boolean =>
  (from >= start && from < end) || (from < start && to >= end);

/** Worked out once for a plan and its yard: the page asks while somebody types. */
const known = new WeakMap<PlanFile, { yard: YardFile; sessions: readonly SessionAhead[] }>();

const allSessions = (plan: PlanFile, yard: YardFile): SessionAhead[] => {
  const calendar = calendarOf(yard.yard.timeZone);
  const [work, full] = [workOf(plan, yard), fullOf(plan, yard)];
  const there = yard.moulds.filter((mould) => !isOutForGood(mould)).length;
  return sessionsOf(yard, calendar).map((session) => {
    const worked = { start: session.from, end: session.to };
    const sum = (minutes: readonly number[]) => minutes.reduce((all, one) => all + one, 0);
    return {
      date: calendar.instantText(session.start).slice(0, 10),
      hands: {
        taken: sum(work.map(({ start, end, people }) => people * within(start, end, worked))),
        there: sum(session.windows.map(({ start, end, crew }) => crew * within(start, end, worked))),
      },
      moulds: {
        taken: new Set(full.filter((one) => takesMould(one, session)).map(({ mould }) => mould)).size,
        there,
      },
    };
  });
};

/**
 * The sessions up to a day, each by how far its people and its moulds are taken by a plan.
 *
 * Example: two people from 8:00 to 12:00 without setting up are 480 minutes; with a strip of 10 minutes for two, 20 of them
 * are taken.
 */
export const sessionsAhead = (plan: PlanFile, yard: YardFile, until: string): SessionAhead[] => {
  const before = known.get(plan);
  const sessions = before?.yard === yard ? before.sessions : allSessions(plan, yard);
  known.set(plan, { yard, sessions });
  return sessions.filter(({ date }) => date <= until);
};
