import type { RackHold } from './fixed-batch.ts';
import { NEVER } from './problem.ts';

/** The pieces on the rack, one entry each: the minute until which it takes how many spaces. */
export interface RackState {
  readyAt: Int32Array;
  spaces: Int32Array;
}

/**
 * Rack spaces taken by pieces that cure out of their moulds (R8). A piece counts from whenever it was put in until it is
 * ready, whatever its own start: tasks of one shift are not placed in order of time, and this way none can be too many.
 */
export class Rack {
  private readyAt: Int32Array;
  private spaces: Int32Array;
  private count = 0;

  constructor(
    private readonly limit: number,
    most: number,
    /** Pieces of fixed strips: they count only from when they are stripped. */
    private readonly ahead: readonly RackHold[] = [],
  ) {
    // Every piece counted takes a space, so that no more of them are there than spaces and what lay there at the start.
    const room = limit >= NEVER ? 0 : most;
    this.readyAt = new Int32Array(room);
    this.spaces = new Int32Array(room);
  }

  reset(): void {
    this.count = 0;
  }

  /** Forgets pieces that are ready by the start of a shift. */
  clearReady(by: number): void {
    let kept = 0;
    for (let i = 0; i < this.count; i++)
      if (this.readyAt[i]! > by) {
        this.readyAt[kept] = this.readyAt[i]!;
        this.spaces[kept++] = this.spaces[i]!;
      }
    this.count = kept;
  }

  put(readyAt: number, spaces: number): void {
    if (this.limit >= NEVER || spaces === 0) return;
    this.readyAt[this.count] = readyAt;
    this.spaces[this.count++] = spaces;
  }

  /** Takes back the last piece put. */
  takeBack(spaces: number): void {
    if (this.limit < NEVER && spaces > 0) this.count--;
  }

  save(): RackState {
    return { readyAt: this.readyAt.slice(0, this.count), spaces: this.spaces.slice(0, this.count) };
  }

  restore(state: RackState): void {
    this.count = state.readyAt.length;
    this.readyAt.set(state.readyAt);
    this.spaces.set(state.spaces);
  }

  /**
   * Earliest minute at or after `from` at which a piece that is ready at `curedAt` can leave its mould: as soon as there
   * is room and stays room, at the latest when it is ready and needs none.
   */
  roomFrom(from: number, curedAt: number, spaces: number): number {
    if (this.limit >= NEVER || spaces === 0 || from >= curedAt) return from;
    if (spaces > this.limit) return curedAt;
    let at = from;
    for (;;) {
      const full = this.fullFrom(at, curedAt, spaces);
      if (full >= NEVER) return at;
      const soonest = this.nextReady(full);
      if (soonest >= curedAt) return curedAt;
      at = soonest;
    }
  }

  /** The first minute, from one to another, at which so many spaces more are too many; NEVER where none is. */
  private fullFrom(from: number, until: number, spaces: number): number {
    if (this.usedAt(from) + spaces > this.limit) return from;
    let first = NEVER;
    for (const hold of this.ahead)
      if (hold.from > from && hold.from < until && hold.from < first && this.usedAt(hold.from) + spaces > this.limit)
        first = hold.from;
    return first;
  }

  private usedAt(at: number): number {
    let used = 0;
    for (let i = 0; i < this.count; i++) if (this.readyAt[i]! > at) used += this.spaces[i]!;
    for (const hold of this.ahead) if (hold.from <= at && hold.until > at) used += hold.spaces;
    return used;
  }

  /** When the next piece after a minute is ready; NEVER where none is. */
  private nextReady(after: number): number {
    let soonest = NEVER;
    for (let i = 0; i < this.count; i++)
      if (this.readyAt[i]! > after && this.readyAt[i]! < soonest) soonest = this.readyAt[i]!;
    for (const hold of this.ahead) if (hold.until > after && hold.until < soonest) soonest = hold.until;
    return soonest;
  }
}
