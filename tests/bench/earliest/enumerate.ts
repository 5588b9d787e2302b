import { piecesFor, stepsFrom } from './steps.ts';
import { NEVER, type Tiny } from './tiny.ts';
import { type Piece, type WorkState, workBegins } from './work-state.ts';

/**
 * What is looked for: the least worth, less being better; Infinity for what may not be. By order: when it is complete, and
 * when its last piece is stripped; left out while that is not known: it is then worth no more than with it.
 */
export type Worth = (completesAt: readonly number[], strippedAt?: readonly number[]) => number;

/** The best way to work, with the pieces that orders without packing get; null where there is none. */
export interface Best {
  worth: number;
  state: WorkState | null;
  completesAt: readonly number[];
  /** As in `state`, every piece with the order that gets it. */
  pieces: readonly Piece[];
}

/** States looked at, at most: a yard that needs more is no tiny one. */
const MOST_STATES = 1_500_000;

/** The yard was too large to look at everything. */
export class TooLarge extends Error {}

/** When an order can be complete at the soonest by what is there and by when the person is free. */
const soonest = (tiny: Tiny, state: WorkState, o: number): number => {
  const { needs, packMinutes, from } = tiny.orders[o]!;
  if (state.packedAt[o]! >= 0) return state.packedAt[o]!;
  let at = tiny.now;
  for (const [c, count] of needs.entries()) {
    if (count === 0) continue;
    const next = state.at + tiny.yard.castings[c]!.stripMinutes;
    const there = state.pieces.filter((p) => p.casting === c && p.usedBy < 0 && p.readyAt <= next);
    const sorted = there.map(({ readyAt }) => readyAt).sort((a, b) => a - b);
    at = Math.max(at, sorted[count - 1] ?? next);
  }
  return packMinutes === 0 ? at : Math.max(at, from, state.at) + packMinutes;
};

/** By order: when the last of its pieces is stripped. */
const strippedFor = ({ orders, now }: Tiny, pieces: readonly Piece[]): number[] =>
  orders.map((_, o) => pieces.reduce((last, p) => (p.usedBy === o ? Math.max(last, p.strippedAt) : last), now));

/** Deals the pieces to the orders without packing in every way, and takes the best. */
const deal = (tiny: Tiny, state: WorkState, worth: Worth, best: Best): Best => {
  let found = best;
  const completesAt = [...state.packedAt];
  const dealFrom = (order: number, pieces: readonly Piece[]): void => {
    if (order === tiny.orders.length) {
      const is = worth(completesAt, strippedFor(tiny, pieces));
      if (is < found.worth) found = { worth: is, state, completesAt: [...completesAt], pieces };
      return;
    }
    if (tiny.orders[order]!.packMinutes > 0) {
      dealFrom(order + 1, pieces);
      return;
    }
    for (const chosen of piecesFor(tiny, pieces, order)) {
      completesAt[order] = Math.max(tiny.now, ...chosen.map((i) => pieces[i]!.readyAt));
      dealFrom(
        order + 1,
        pieces.map((piece, i) => (chosen.includes(i) ? { ...piece, usedBy: order } : piece)),
      );
    }
  };
  dealFrom(0, state.pieces);
  return found;
};

/** Nothing is half done that has to be done whole: every pour is out of its mould, every set-up was for a pour. */
const isWhole = (tiny: Tiny, { moulds, packedAt }: WorkState): boolean =>
  moulds.every(
    ({ held, prepped, isPreppedBefore, turns, dryFrom }) =>
      (!held || held.pour < 0) && (prepped < 0 || isPreppedBefore) && (dryFrom === 0 || turns > 0),
  ) && packedAt.every((at, o) => at >= 0 || tiny.orders[o]!.packMinutes === 0);

/** How late it is that the last order has a piece stripped at a minute; only what is later by it counts as later. */
type StripRank = (strippedAt: number) => number;

/** Pieces in an order that makes like ones stand side by side; where it is asked when those of the last order are stripped, by that too. */
const sorted = ({ pieces, packedAt }: WorkState, rankOf: StripRank | undefined) => {
  const last = packedAt.length - 1;
  const rank = ({ usedBy, strippedAt }: Piece) => (usedBy < 0 || usedBy === last ? rankOf!(strippedAt) : 0);
  return pieces
    .map((piece) => {
      const { casting, aside, from, usedBy, readyAt } = piece;
      const sort = `${casting} ${aside} ${from} ${usedBy >= 0}`;
      return rankOf
        ? { sort: `${sort} ${usedBy === last}`, times: [readyAt, rank(piece)] }
        : { sort, times: [readyAt] };
    })
    .sort((x, y) => (x.sort < y.sort ? -1 : x.sort > y.sort ? 1 : x.times[0]! - y.times[0]!));
};

/** What kind of state it is, and its minutes: of two of one kind, one whose minutes are all as soon is as good. */
const shapeOf = (state: WorkState, rankOf: StripRank | undefined) => {
  const { at, moulds, bags, left, packedAt } = state;
  const times = [at, ...packedAt];
  const shape: unknown[] = [bags, left, packedAt.map((x) => x >= 0)];
  for (const { setFor, isDirty, prepped, isPreppedBefore, dryFrom, turns, held } of moulds) {
    shape.push(setFor, isDirty, prepped, isPreppedBefore, turns, held && [held.casting, held.from, held.pour < 0]);
    times.push(dryFrom, ...(held ? [held.outAt, held.curedAt] : []));
  }
  for (const piece of sorted(state, rankOf)) {
    shape.push(piece.sort);
    times.push(...piece.times);
  }
  return { shape: JSON.stringify(shape), times };
};

/** States seen, without those that others are as good as. */
class Seen {
  private readonly shapes = new Map<string, number[][]>();

  constructor(private readonly rankOf: StripRank | undefined) {}

  /** Whether a state is as good as none before it; it is then remembered. */
  isNew(state: WorkState): boolean {
    const { shape, times } = shapeOf(state, this.rankOf);
    const before = this.shapes.get(shape) ?? [];
    if (before.some((other) => other.every((x, i) => x <= times[i]!))) return false;
    const left = before.filter((other) => !times.every((x, i) => x <= other[i]!));
    this.shapes.set(shape, [...left, times]);
    return true;
  }
}

/**
 * The best of everything that one person could do in a tiny yard: all tasks in every order, each as soon as it may be, all
 * batches of the moulds that are set up, all ways to deal the pieces. `worth` may only grow with the minutes at which orders
 * are complete and, with `rankOf`, with how late the last piece of the last order is stripped.
 */
export const bestOf = (tiny: Tiny, worth: Worth, rankOf?: StripRank): Best => {
  let best: Best = { worth: Infinity, state: null, completesAt: [], pieces: [] };
  let states = 0;
  const seen = new Seen(rankOf);
  const go = (state: WorkState): void => {
    if (++states > MOST_STATES) throw new TooLarge();
    if (isWhole(tiny, state)) best = deal(tiny, state, worth, best);
    const steps = [...stepsFrom(tiny, state)].sort((a, b) => a.at - b.at);
    for (const next of steps) {
      if (next.at >= NEVER || worth(tiny.orders.map((_, o) => soonest(tiny, next, o))) >= best.worth) continue;
      if (seen.isNew(next)) go(next);
    }
  };
  const start = workBegins(tiny);
  if (worth(tiny.orders.map((_, o) => soonest(tiny, start, o))) < Infinity) go(start);
  return best;
};
