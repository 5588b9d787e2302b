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
   * is room, at the latest when it is ready and needs none.
   */
  roomFrom(from: number, curedAt: number, spaces: number): number {
    if (this.limit >= NEVER || spaces === 0 || from >= curedAt) return from;
    if (spaces > this.limit) return curedAt;
    let at = from;
    for (;;) {
      let used = spaces;
      let soonest = NEVER;
      for (let i = 0; i < this.count; i++)
        if (this.readyAt[i]! > at) {
          used += this.spaces[i]!;
          if (this.readyAt[i]! < soonest) soonest = this.readyAt[i]!;
        }
      if (used <= this.limit) return at;
      if (soonest >= curedAt || soonest === NEVER) return curedAt;
      at = soonest;
    }
  }
}
