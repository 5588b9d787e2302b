import type { TaskKind } from '../../../shared/work.ts';
import type { Calendar } from '../calendar/calendar.ts';
import type { Session } from '../calendar/sessions.ts';
import { BATCH, PACK, PREP, type Shifts, STRIP } from './problem.ts';

const BITS: Record<TaskKind, number> = { prep: PREP, batch: BATCH, strip: STRIP, pack: PACK };
/** A session longer than this is cut at midnights; no one yard's working day is. */
const LONG_SESSION_MINUTES = 16 * 60;

interface Stretch {
  session: Session;
  from: number;
  to: number;
}

/** The stretches of sessions after `now` in which a task can lie; set-up and clearing-up are left out. */
const stretchesOf = (sessions: Session[], now: number, calendar: Calendar): Stretch[] => {
  const stretches: Stretch[] = [];
  for (const session of sessions) {
    let from = Math.max(session.from, now);
    if (session.to - session.from > LONG_SESSION_MINUTES)
      for (let day = calendar.dayOf(from) + 1; calendar.midnightOf(day) < session.to; day++) {
        const midnight = calendar.midnightOf(day);
        if (midnight > from) stretches.push({ session, from, to: midnight });
        from = Math.max(from, midnight);
      }
    if (from < session.to) stretches.push({ session, from, to: session.to });
  }
  return stretches;
};

const fillMinutes = (stretch: Stretch, offset: number, people: Uint16Array, allow: Uint8Array): void => {
  for (const window of stretch.session.windows) {
    const bits = window.allows.reduce((mask, kind) => mask | BITS[kind], 0);
    const last = Math.min(window.end, stretch.to) - stretch.from + offset;
    for (let i = Math.max(window.start, stretch.from) - stretch.from + offset; i < last; i++) {
      people[i] = Math.min(65535, people[i]! + window.crew);
      allow[i] = allow[i]! | bits;
    }
  }
  const { from, wetUntil } = stretch.session;
  const dry = Math.min(wetUntil, stretch.to) - stretch.from + offset;
  for (let i = Math.max(from, stretch.from) - stretch.from + offset; i < dry; i++)
    people[i] = Math.max(0, people[i]! - 1);
};

/** Index of the next shift after each one that has a minute for the kind of task; the number of shifts if none has. */
const nextWith = (bit: number, count: number, offset: Int32Array, allow: Uint8Array): Int32Array => {
  const next = new Int32Array(count);
  for (let s = count - 1, following = count; s >= 0; s--) {
    next[s] = following;
    if (allow.subarray(offset[s]!, offset[s + 1]!).some((mask) => mask & bit)) following = s;
  }
  return next;
};

/**
 * Sessions as flat arrays of people and allowed kinds, a minute an entry (R1: crews of windows that are open at once
 * add up, less who keeps pieces wet, and a kind is allowed where some open window allows it).
 */
export const shiftsOf = (sessions: Session[], now: number, calendar: Calendar): Shifts => {
  const stretches = stretchesOf(sessions, now, calendar);
  const count = stretches.length;
  const from = Int32Array.from(stretches, (x) => x.from);
  const to = Int32Array.from(stretches, (x) => x.to);
  const offset = new Int32Array(count + 1);
  for (let s = 0; s < count; s++) offset[s + 1] = offset[s]! + to[s]! - from[s]!;
  const people = new Uint16Array(offset[count]!);
  const allow = new Uint8Array(offset[count]!);
  stretches.forEach((stretch, s) => {
    fillMinutes(stretch, offset[s]!, people, allow);
  });
  return {
    count,
    from,
    to,
    sessionEnd: Int32Array.from(stretches, (x) => x.session.end),
    day: Int32Array.from(stretches, (x) => calendar.dayOf(x.from)),
    offset,
    people,
    allow,
    mixing: new Uint16Array(offset[count]!),
    nextStrip: nextWith(STRIP, count, offset, allow),
    nextPack: nextWith(PACK, count, offset, allow),
  };
};
