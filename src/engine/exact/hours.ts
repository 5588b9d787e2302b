import { curedAt, outAt } from '../book/curing-times.ts';
import { earliestAlone } from '../bound/slots.ts';
import { BATCH, NEVER, type Problem, STRIP } from '../decoder/problem.ts';
import { weatherFault } from '../decoder/weather.ts';

/** No task that fits into a session is as long. */
const LONGEST = 4096;

/** When a batch begins and how long it takes: mixing and filling, and washing up after. */
interface BatchMinutes {
  mix: number;
  fill: number;
}

/** The hours of one person who does one thing after another: when each kind of task may begin. Answers are remembered. */
export class Hours {
  private readonly starts = new Map<number, number>();
  private readonly batches = new Map<number, number>();
  private readonly worked: { at: number; sum: number }[] = [];

  constructor(private readonly problem: Problem) {}

  /** The first minute from one on at which a task of a kind may begin; NEVER when none is left. */
  start(kind: number, minutes: number, from: number, people = 1): number {
    if (from >= NEVER || minutes >= LONGEST || people > 1) return NEVER;
    const key = ((from - this.problem.now) * LONGEST + minutes) * 16 + kind;
    const known = this.starts.get(key);
    if (known !== undefined) return known;
    const start = earliestAlone(this.problem, kind, minutes, people, from);
    this.starts.set(key, start);
    return start;
  }

  /** The end of such a task. */
  end(kind: number, minutes: number, from: number, people = 1): number {
    const start = this.start(kind, minutes, from, people);
    return start >= NEVER ? NEVER : start + minutes;
  }

  private endOfSession(minute: number): number {
    const { shifts } = this.problem;
    let [low, high] = [0, shifts.count - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (shifts.from[middle]! <= minute) low = middle;
      else high = middle - 1;
    }
    return shifts.sessionEnd[low]!;
  }

  /** The first minute after a start that fails at which it may do: another temperature, another session. */
  private next(start: number, lastFill: number, isAttended: boolean): number {
    if (!isAttended) return this.endOfSession(start);
    const change = this.problem.climate.nextStep(start);
    return lastFill < change ? Math.max(start + 1, change - (lastFill - start)) : start + 1;
  }

  private findBatch({ mix: index, fill }: BatchMinutes, from: number): number {
    const mix = this.problem.mixes[index]!;
    const minutes = mix.mixMinutes + fill;
    let start = this.start(BATCH, minutes + mix.washMinutes, from, mix.crew);
    while (start < NEVER) {
      const lastFill = start + minutes;
      const isAttended = lastFill + mix.attendMinutes <= this.endOfSession(start);
      const isSoft = mix.ageing.ageBetween(start + mix.mixMinutes, lastFill) <= mix.workingMinutes + 1e-6;
      if (isAttended && isSoft && !weatherFault(this.problem, index, start, lastFill)) return start;
      start = this.start(BATCH, minutes + mix.washMinutes, this.next(start, lastFill, isAttended), mix.crew);
    }
    return NEVER;
  }

  /** The first minute from one on at which a batch may begin that takes so long to fill (R1, R3, R9). */
  batch(mix: number, fill: number, from: number): number {
    if (from >= NEVER) return NEVER;
    const key = ((from - this.problem.now) * LONGEST + fill) * 64 + mix;
    const known = this.batches.get(key);
    if (known !== undefined) return known;
    const start = fill >= LONGEST ? NEVER : this.findBatch({ mix, fill }, from);
    this.batches.set(key, start);
    return start;
  }

  /** When a piece that is full by a minute, and nobody has to do with before another, is out and ready (R7, R8). */
  out(casting: number, filled: number, from: number): { emptyAt: number; readyAt: number } {
    const { mix, stripMinutes, stripCrew } = this.problem.castings[casting]!;
    const setting = this.problem.mixes[mix]!;
    const emptyAt = this.end(STRIP, stripMinutes, Math.max(from, outAt(setting, filled)), stripCrew);
    return { emptyAt, readyAt: Math.max(emptyAt, curedAt(setting, filled)) };
  }

  /** First minute by which so many can have been worked from one on; NEVER where the horizon has not as many. */
  workedBy(from: number, minutes: number): number {
    if (from >= NEVER || minutes <= 0) return from;
    const sums = this.sums();
    const done = this.workedAt(from);
    let [low, high] = [0, sums.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (sums[middle]!.sum >= done + minutes) high = middle;
      else low = middle + 1;
    }
    const next = sums[low];
    return next ? next.at - (next.sum - done - minutes) : NEVER;
  }

  private workedAt(minute: number): number {
    const sums = this.sums();
    let [low, high] = [0, sums.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (sums[middle]!.at >= minute) high = middle;
      else low = middle + 1;
    }
    const next = sums[low];
    if (!next) return sums.at(-1)?.sum ?? 0;
    const before = low > 0 ? sums[low - 1]!.sum : 0;
    return Math.max(before, next.sum - (next.at - minute));
  }

  /** By stretch of hours: its end, and all minutes worked by then. */
  private sums(): { at: number; sum: number }[] {
    const { shifts } = this.problem;
    if (this.worked.length > 0) return this.worked;
    let sum = 0;
    for (let s = 0; s < shifts.count; s++) {
      sum += shifts.to[s]! - shifts.from[s]!;
      this.worked.push({ at: shifts.to[s]!, sum });
    }
    return this.worked;
  }
}
