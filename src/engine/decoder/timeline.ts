import { NONE, type Shifts } from './problem.ts';

/**
 * People still free, minute by minute, in one shift at a time. Minutes are copied from the yard's hours when a shift is
 * entered, so that a plan which ends in May never touches December.
 */
export class Timeline {
  readonly free: Uint16Array;
  private readonly allow: Uint8Array;
  /** Batches being mixed at once, minute by minute. */
  private readonly mixing: Uint16Array;
  /** Index of minute 0 of the shift entered: minute t stands at `base + t`. */
  private base = 0;
  from = 0;
  to = 0;
  /** No one is free before this minute of the shift entered. */
  firstFree = 0;

  constructor(
    private readonly shifts: Shifts,
    private readonly mixers: number,
  ) {
    this.free = new Uint16Array(shifts.people.length);
    this.allow = shifts.allow;
    this.mixing = new Uint16Array(shifts.people.length);
  }

  enter(shift: number): void {
    const { shifts } = this;
    const start = shifts.offset[shift]!;
    const end = shifts.offset[shift + 1]!;
    this.from = shifts.from[shift]!;
    this.to = shifts.to[shift]!;
    this.base = start - this.from;
    this.free.set(shifts.people.subarray(start, end), start);
    this.mixing.set(shifts.mixing.subarray(start, end), start);
    this.firstFree = this.from;
    this.advance();
  }

  private advance(): void {
    const { free, base, to } = this;
    let t = this.firstFree;
    while (t < to && (free[base + t] === 0 || this.allow[base + t] === 0)) t++;
    this.firstFree = t;
  }

  /** Earliest start at or after `earliest` of a task that ends by `latestEnd`; NONE when it does not fit. */
  earliest(kind: number, minutes: number, people: number, earliest: number, latestEnd = this.to): number {
    const { free, allow, base } = this;
    let start = Math.max(earliest, people > 0 ? this.firstFree : this.from);
    const last = Math.min(latestEnd, this.to);
    for (let t = start; t < start + minutes; t++) {
      if (start + minutes > last) return NONE;
      if (free[base + t]! < people || (allow[base + t]! & kind) === 0) start = t + 1;
    }
    return start + minutes > last ? NONE : start;
  }

  /** Latest start at or after `earliest` of a task that ends by `latestEnd`; NONE when it does not fit. */
  latest(kind: number, minutes: number, people: number, earliest: number, latestEnd = this.to): number {
    const { free, allow, base } = this;
    let end = Math.min(latestEnd, this.to);
    const first = Math.max(earliest, this.from);
    for (let t = end - 1; t >= end - minutes; t--) {
      if (end - minutes < first) return NONE;
      if (free[base + t]! < people || (allow[base + t]! & kind) === 0) end = t;
    }
    return end - minutes < first ? NONE : end - minutes;
  }

  /**
   * The longest stretch from `earliest` to `latestEnd` in which a task can go on all along, the first of equal ones; of no
   * minutes where it never can.
   */
  longest(kind: number, people: number, earliest: number, latestEnd: number): { start: number; minutes: number } {
    const { free, allow, base } = this;
    let best = { start: earliest, minutes: 0 };
    let start = Math.max(earliest, this.from);
    const last = Math.min(latestEnd, this.to);
    for (let t = start; t <= last; t++) {
      if (t < last && free[base + t]! >= people && (allow[base + t]! & kind) !== 0) continue;
      if (t - start > best.minutes) best = { start, minutes: t - start };
      start = t + 1;
    }
    return best;
  }

  /** As `earliest` or `latest`, with a mixer free for the first `mixMinutes`. */
  batchStart(
    kind: number,
    minutes: number,
    people: number,
    mixMinutes: number,
    from: number,
    by: number,
    late: boolean,
  ): number {
    let [lo, hi] = [from, by];
    for (;;) {
      const start = late ? this.latest(kind, minutes, people, lo, hi) : this.earliest(kind, minutes, people, lo, hi);
      if (start === NONE) return NONE;
      const clash = this.mixerClash(start, start + mixMinutes, late);
      if (clash === NONE) return start;
      if (late) hi = clash - mixMinutes + minutes;
      else lo = clash + 1;
    }
  }

  /** The last minute (or first, looking from the end) at which no mixer is free; NONE when one is free all along. */
  private mixerClash(start: number, end: number, first: boolean): number {
    if (this.mixers <= 0 && end > start) return first ? start : end;
    const { mixing, base, mixers } = this;
    if (first) {
      for (let t = start; t < end; t++) if (mixing[base + t]! >= mixers) return t;
    } else for (let t = end - 1; t >= start; t--) if (mixing[base + t]! >= mixers) return t;
    return NONE;
  }

  take(start: number, minutes: number, people: number): void {
    const { free, base } = this;
    for (let i = base + start; i < base + start + minutes; i++) free[i] = free[i]! - people;
    if (start <= this.firstFree) this.advance();
  }

  /** Puts back what `take` took; the same three numbers. */
  giveBack(start: number, minutes: number, people: number): void {
    const { free, base } = this;
    for (let i = base + start; i < base + start + minutes; i++) free[i] = free[i]! + people;
    if (minutes > 0 && start < this.firstFree) this.firstFree = start;
  }

  takeMixer(start: number, mixMinutes: number): void {
    const { mixing, base } = this;
    for (let i = base + start; i < base + start + mixMinutes; i++) mixing[i] = mixing[i]! + 1;
  }
}
