import { type PackSpell, spellsOf } from '../../../shared/plan.ts';
import type { Minute } from '../../../shared/time.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { TaskKind } from '../../../shared/work.ts';
import type { Session } from '../calendar/sessions.ts';
import { type Finding, finder } from './finding.ts';
import type { Ground } from './ground.ts';
import { isPackUnderWay } from './under-way.ts';

interface Task {
  kind: TaskKind;
  name: string;
  start: Minute;
  end: Minute;
  people: number;
  /** Begun by now (R14): it takes people from now on, and is not asked whether it may. */
  underWay: boolean;
}

/** Set-ups under way, each once, whether anything is poured after it or not. */
const prepsUnderWay = ({ underWay }: Ground): Task[] =>
  [...underWay.preps.values()].map((x) => ({
    kind: 'prep',
    name: `the set-up of ${x.mould}`,
    start: minuteOf(x.prepStart),
    end: minuteOf(x.prepEnd),
    people: 1,
    underWay: true,
  }));

const packing = (id: string, { packStart, packEnd }: PackSpell, underWay: boolean): Task => ({
  kind: 'pack',
  name: `packing ${id}`,
  start: minuteOf(packStart),
  end: minuteOf(packEnd),
  people: 1,
  underWay,
});

/** Each spell of packing each order; those under way once, whether the order is planned or not. */
const packsOf = ({ plan, underWay }: Ground): Task[] => [
  ...[...underWay.packs].map(([id, spell]) => packing(id, spell, true)),
  ...plan.orders.flatMap((x) =>
    spellsOf(x)
      .filter((spell) => !isPackUnderWay(underWay, x.id, spell))
      .map((spell) => packing(x.id, spell, false)),
  ),
];

const tasksOf = ({ batches, pours, coats, strips }: Ground): Task[] => [
  ...batches.map(
    (x): Task => ({
      kind: 'batch',
      name: `batch ${x.batch.id}`,
      start: x.start,
      end: x.end,
      people: x.mix.crew,
      underWay: x.underWay,
    }),
  ),
  ...pours
    .filter((x) => !x.underWay && !x.prepUnderWay)
    .map(
      (x): Task => ({
        kind: 'prep',
        name: `prep for ${x.name}`,
        start: x.prepStart,
        end: x.prepEnd,
        people: 1,
        underWay: false,
      }),
    ),
  // Whoever may set a mould up may coat it.
  ...coats.map(({ name, start, end, underWay }): Task => ({ kind: 'prep', name, start, end, people: 1, underWay })),
  ...[...pours.filter((x) => !x.stays), ...strips.values()].map(
    (x): Task => ({
      kind: 'strip',
      name: `strip of ${x.name}`,
      start: x.stripStart,
      end: x.stripEnd,
      people: x.casting.stripCrew,
      underWay: x.underWay && !('pour' in x),
    }),
  ),
];

/** The first minute of a task at which no open window allows it, or null. */
const notAllowedAt = (session: Session, task: Task): Minute | null => {
  for (let minute = task.start; minute < task.end; minute++)
    if (!session.windows.some((x) => x.start <= minute && minute < x.end && x.allows.includes(task.kind)))
      return minute;
  return null;
};

/** The first minute at which there is more to do than people, some of it chosen, or null. */
const tooFewPeopleAt = (session: Session, tasks: Task[], underWay: Task[]): Minute | null => {
  const spare = new Int32Array(session.end - session.start);
  const chosen = new Int32Array(session.end - session.start);
  const add = (to: Int32Array, start: Minute, end: Minute, people: number) => {
    for (let m = Math.max(start, session.start); m < Math.min(end, session.end); m++) to[m - session.start]! += people;
  };
  for (const x of session.windows) add(spare, x.start, x.end, x.crew);
  add(spare, session.from, session.wetUntil, -1);
  for (const x of tasks) add(spare, x.start, x.end, -x.people);
  for (const x of tasks) add(chosen, x.start, x.end, 1);
  for (const x of underWay) add(spare, x.start, x.end, -x.people);
  const short = spare.findIndex((people, i) => people < 0 && chosen[i]! > 0);
  return short < 0 ? null : session.start + short;
};

/**
 * R1: every task whole inside one session, between setting up and clearing up, not before now, at every minute in a window
 * for its kind, and never more to do than people are there, less the one who keeps pieces wet; of what has begun (R14) only that, from now on. Minute by minute: plain, not fast.
 *
 * Example: two preps at 09:00 in a session of one person are found as "too few people at 2027-04-10T09:00:00+01:00".
 */
export const checkSessions = (ground: Ground): Finding[] => {
  const findings: Finding[] = [];
  const found = finder(findings, 'R1');
  const text = ground.calendar.instantText;
  const inSession = new Map<Session, Task[]>(ground.sessions.map((x) => [x, []]));
  const tasks = [...tasksOf(ground), ...packsOf(ground), ...prepsUnderWay(ground)];
  const underWay = tasks.filter((x) => x.underWay).map((x) => ({ ...x, start: Math.max(x.start, ground.now) }));
  for (const task of tasks.filter((x) => !x.underWay)) {
    if (task.end < task.start) found(`${task.name} ends before it starts`);
    if (task.start < ground.now) found(`${task.name} starts before now`);
    const session = ground.sessions.find((x) => x.from <= task.start && task.end <= x.to);
    if (!session) {
      found(`${task.name} at ${text(task.start)} is in no session`);
      continue;
    }
    const minute = notAllowedAt(session, task);
    if (minute !== null) found(`${task.name}: no window is for that at ${text(minute)}`);
    inSession.get(session)!.push(task);
  }
  for (const [session, tasks] of inSession) {
    const minute = tasks.length > 0 ? tooFewPeopleAt(session, tasks, underWay) : null;
    if (minute !== null) found(`too few people at ${text(minute)}`);
  }
  return findings;
};
