import type { Minute } from '../../../shared/time.ts';
import type { TaskKind } from '../../../shared/work.ts';
import type { Session } from '../calendar/sessions.ts';

/** Work of some minutes for so many people; a batch needs a mixer for the first of its minutes. */
export interface Task {
  kind: TaskKind;
  start: Minute;
  minutes: number;
  people: number;
  mixMinutes?: number;
}

/** Who is free in one session, minute by minute, while tasks are placed in it (R1, R2). */
export class Hands {
  private readonly people: Int32Array;
  private readonly mixing: Int32Array;

  constructor(
    private readonly session: Session,
    private readonly mixers: number,
  ) {
    const minutes = Math.max(0, session.to - session.from);
    this.people = new Int32Array(minutes);
    this.mixing = new Int32Array(minutes);
    for (const { start, end, crew } of session.windows)
      for (let t = Math.max(start, session.from); t < Math.min(end, session.to); t++)
        this.people[t - session.from] = this.people[t - session.from]! + crew;
    for (let t = session.from; t < Math.min(session.wetUntil, session.to); t++)
      this.people[t - session.from] = this.people[t - session.from]! - 1;
  }

  private allows(kind: TaskKind, minute: Minute): boolean {
    return this.session.windows.some(
      ({ start, end, allows }) => minute >= start && minute < end && allows.includes(kind),
    );
  }

  /** The last minute at which a task that would begin then cannot be under way; -1 when it can be all the time. */
  private heldUp({ kind, minutes, people, mixMinutes = 0 }: Task, start: Minute): number {
    for (let t = start + minutes - 1; t >= start; t--) {
      const place = t - this.session.from;
      const mixes = t < start + mixMinutes;
      if (this.people[place]! < people || !this.allows(kind, t) || (mixes && this.mixing[place]! >= this.mixers))
        return t;
    }
    return -1;
  }

  /** The first minute at or after the task's start at which there is room for it; null when there is none. */
  earliest(task: Task): Minute | null {
    let start = Math.max(task.start, this.session.from);
    while (start + task.minutes <= this.session.to) {
      const held = this.heldUp(task, start);
      if (held < 0) return start;
      start = held + 1;
    }
    return null;
  }

  /** Takes the people and the mixer, whether they are free or not: what has begun has begun. */
  take({ minutes, people, mixMinutes = 0 }: Task, start: Minute): void {
    const { from, to } = this.session;
    for (let t = Math.max(start, from); t < Math.min(start + minutes, to); t++) {
      this.people[t - from] = this.people[t - from]! - people;
      if (t < start + mixMinutes) this.mixing[t - from] = this.mixing[t - from]! + 1;
    }
  }
}
