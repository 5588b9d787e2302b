import { minuteOf } from '../../../shared/time.ts';
import type { TaskKind } from '../../../shared/work.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendar, sessions } from '../../contract/audit-plan.mjs';

/** One stretch of `unitMinutes` in which tasks can lie, or the end of a session (no people then). */
interface Point {
  minute: number;
  session: number;
  people: number;
  allows: ReadonlySet<TaskKind>;
}

/**
 * The first sessions of a yard cut into equal units. A plan whose every duration and every release is a multiple of the
 * unit stays a plan when all its times are rounded down to it, so nothing is lost by looking at these points only.
 */
export interface Grid {
  unitMinutes: number;
  points: Point[];
  /** By session: its end, clearing up included, and the point at which its last task has to have ended. */
  sessionEnd: number[];
  lastPoint: number[];
  /** First day that is not covered: the next session starts on it. Infinity when there is no session more. */
  nextSessionDay: number;
}

const greatestDivisor = (a: number, b: number): number => (b === 0 ? a : greatestDivisor(b, a % b));

/** The largest number of minutes that divides every duration of the yard and every difference between its times. */
const unitOf = (yard: YardFile, times: number[]): number => {
  const first = times[0] ?? 0;
  const durations = [
    ...yard.mixes.flatMap((x) => [x.mixMinutes, x.washMinutes, x.attendMinutes, x.demouldMinutes, x.cureHours * 60]),
    ...yard.castings.flatMap((x) => [x.fillMinutes, x.stripMinutes, x.cleanMinutes, x.prepMinutes]),
    ...yard.moulds.flatMap((x) => [x.oilMinutes, x.oilDryMinutes, ...x.makes.map((m) => m.changeMinutes)]),
    ...yard.kits.map((x) => x.packMinutes),
    ...yard.inMould.map((x) => minuteOf(x.filledAt) - first),
    ...yard.finished.flatMap((x) => (x.readyAt ? [minuteOf(x.readyAt) - first] : [])),
    ...times.map((x) => x - first),
  ];
  return durations.reduce((unit, x) => greatestDivisor(unit, Math.abs(x)), 0);
};

/** The first `count` sessions as a grid. */
export const gridOf = (yard: YardFile, count: number): Grid => {
  const all = sessions(yard).filter((x) => x.to > minuteOf(yard.yard.now));
  const open = all.slice(0, count);
  const dayOf = calendar(yard.yard.timeZone).dateOf;
  const unitMinutes = unitOf(
    yard,
    open.flatMap((x) => [x.from, x.to, x.end, ...x.windows.flatMap((w) => [w.start, w.end])]),
  );
  const grid: Grid = {
    unitMinutes,
    points: [],
    sessionEnd: [],
    lastPoint: [],
    nextSessionDay: Number.POSITIVE_INFINITY,
  };
  open.forEach((session, s) => {
    for (let minute = session.from; minute <= session.to; minute += unitMinutes) {
      const windows = session.windows.filter((w) => minute < session.to && w.start <= minute && minute < w.end);
      const people = windows.reduce((sum, w) => sum + w.crew, 0);
      grid.points.push({ minute, session: s, people, allows: new Set(windows.flatMap((w) => w.allows)) });
    }
    grid.sessionEnd.push(session.end);
    grid.lastPoint.push(grid.points.length - 1);
  });
  const next = all[count];
  if (next) grid.nextSessionDay = Math.round(Date.parse(dayOf(next.start)) / 86_400_000);
  return grid;
};

/** First point at or after a minute; as many as there are points when there is none. */
export const pointFrom = (grid: Grid, minute: number): number => {
  const found = grid.points.findIndex((point) => point.minute >= minute);
  return found < 0 ? grid.points.length : found;
};

/** Last point at or before a minute, -1 when there is none. */
export const pointUpTo = (grid: Grid, minute: number): number => grid.points.findLastIndex((p) => p.minute <= minute);

/** Points at which a task of so many minutes can start. */
export const startsOf = (grid: Grid, kind: TaskKind, minutes: number): number[] => {
  const units = minutes / grid.unitMinutes;
  const fits = (start: number) => {
    if (start + units > grid.lastPoint[grid.points[start]!.session]!) return false;
    for (let p = start; p < start + units; p++) if (!grid.points[p]!.allows.has(kind)) return false;
    return true;
  };
  return grid.points.flatMap((_, start) => (fits(start) ? [start] : []));
};
