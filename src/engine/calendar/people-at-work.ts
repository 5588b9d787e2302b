import type { Minute } from '../../../shared/time.ts';

/** Hours of so many people, half-open. */
export interface PeopleThere {
  start: Minute;
  end: Minute;
  crew: number;
}

/** Work that takes so many people at once, half-open. */
export interface TakesPeople {
  start: Minute;
  end: Minute;
  people: number;
}

/** One person: when that one is there, and which of the tasks are theirs, by their place, in order of time. */
export interface Person {
  start: Minute;
  end: Minute;
  tasks: number[];
}

/** Hours as people: whose hours begin the minute another's are over takes that one's place. */
const peopleOf = (windows: readonly PeopleThere[]): Person[] => {
  const people: Person[] = [];
  for (const { start, end, crew } of [...windows].sort((a, b) => a.start - b.start || b.end - a.end))
    for (let one = 0; one < crew; one++) {
      const gone = people.find((person) => person.end === start);
      if (gone) gone.end = end;
      else people.push({ start, end, tasks: [] });
    }
  return people;
};

/** There throughout first; of those, whose hours end soonest, so that who stays is free for what comes late. */
const byFit =
  ({ start, end }: TakesPeople) =>
  (a: Person, b: Person): number => {
    const misses = (one: Person) => Math.max(0, one.start - start) + Math.max(0, end - one.end);
    return misses(a) - misses(b) || a.end - b.end;
  };

/**
 * Who does which task of a session, so that nobody does two things at once: a plan counts heads and names
 * nobody. Tasks are dealt in order of time. A task that asks for more people than are free then is dealt to those who are.
 *
 * Two people, one from minute 0 to 100 and one from 20 to 60, and tasks of one person at 0 to 30, 20 to 50 and 50 to 100:
 * the first and the third are done by who stays, the second by who leaves at 60.
 */
export const peopleAtWork = (windows: readonly PeopleThere[], tasks: readonly TakesPeople[]): Person[] => {
  const people = peopleOf(windows);
  const busyUntil = new Map<Person, Minute>();
  const inTime = tasks.map((task, place) => ({ task, place })).sort((a, b) => a.task.start - b.task.start);
  for (const { task, place } of inTime) {
    const free = people.filter((one) => (busyUntil.get(one) ?? Number.NEGATIVE_INFINITY) <= task.start);
    for (const one of free.sort(byFit(task)).slice(0, task.people)) {
      one.tasks.push(place);
      busyUntil.set(one, Math.max(task.end, busyUntil.get(one) ?? task.end));
    }
  }
  return people;
};
