import { curedAt, outAt } from '../book/curing-times.ts';
import { NEVER, NONE, type Problem } from '../decoder/problem.ts';

/** A piece that is out of its mould, or was finished before. */
export interface Piece {
  casting: number;
  readyAt: number;
  /** The order it is set aside for, NONE for nobody. */
  aside: number;
  /** When its batch began; NEVER for a piece that was there before. An order may have it whose first day has come by then. */
  begunAt: number;
  usedBy: number;
}

/** What a mould holds. */
interface Held {
  casting: number;
  outAt: number;
  curedAt: number;
  aside: number;
  begunAt: number;
  /** Place of its pour among all pours; NONE for what was in the mould before. */
  pour: number;
}

/** A mould as it stands, with all that what is done in it next depends on. */
export interface MouldNow {
  setFor: number;
  isDirty: boolean;
  /** Casting it is set up for, NONE for none; `asIs`: it was so before the plan begins. */
  prepped: number;
  asIs: boolean;
  prepStart: number;
  prepEnd: number;
  /** Usable and dry from then on. */
  freeFrom: number;
  turns: number;
  held: Held | null;
}

/** One mould of a batch, from its set-up to the end of its fill. */
export interface Fill {
  mould: number;
  casting: number;
  prepStart: number;
  prepEnd: number;
  fillStart: number;
  fillEnd: number;
}

/** What the one person does; a set-up is written down with the fill after it. */
export type Task =
  | { kind: 'coat'; mould: number; start: number; end: number }
  | { kind: 'batch'; mix: number; start: number; mixEnd: number; end: number; fills: readonly Fill[] }
  | { kind: 'strip'; mould: number; pour: number; start: number; end: number; readyAt: number }
  | { kind: 'pack'; order: number; start: number; end: number };

/** A task and all those before it. */
export interface Done {
  before: Done | null;
  task: Task;
}

/** All that the one person has done so far, and what has come of it. Never changed: each step makes another. */
export interface Work {
  /** The person is free from then on. */
  at: number;
  moulds: readonly MouldNow[];
  pieces: readonly Piece[];
  /** By material: what has been used of it while it could run short. */
  used: readonly number[];
  pours: number;
  /** By casting: how many more may be poured. */
  left: readonly number[];
  /** By order: when it is packed; NONE before, and where nothing is packed. */
  packedAt: readonly number[];
  done: Done | null;
}

/** What a mould holds once a pour of it is full. */
export const heldAfter = (problem: Problem, casting: number, filled: number, pour: number, begunAt: number): Held => {
  const mix = problem.mixes[problem.castings[casting]!.mix]!;
  return { casting, outAt: outAt(mix, filled), curedAt: curedAt(mix, filled), aside: NONE, begunAt, pour };
};

const mouldsNow = (problem: Problem): MouldNow[] =>
  problem.moulds.map((mould, k) => {
    const piece = problem.inMould.find((one) => one.mould === k);
    const held = piece
      ? { ...heldAfter(problem, piece.casting, piece.filledAt, NONE, NEVER), aside: piece.order }
      : null;
    const isPrepped = mould.prepped && !piece && mould.usableFrom < NEVER;
    return {
      setFor: piece?.casting ?? mould.setFor,
      isDirty: mould.dirty || piece !== undefined,
      prepped: isPrepped ? mould.setFor : NONE,
      asIs: isPrepped,
      ...{ prepStart: NONE, prepEnd: NONE },
      freeFrom: mould.usableFrom,
      turns: mould.turnsSinceOil,
      held,
    };
  });

const piecesNow = ({ finished, now }: Problem): Piece[] =>
  finished.flatMap(({ casting, count, readyAt, order }) =>
    Array.from({ length: count }, () => ({
      casting,
      readyAt: Math.max(now, readyAt),
      aside: order,
      begunAt: NEVER,
      usedBy: NONE,
    })),
  );

/**
 * A yard at `now` in which these orders are made. Of a casting no more are poured than they ask for in all, less the pieces
 * that are there at once for whoever wants them: a new one never serves better than one of those.
 */
export const workBegins = (problem: Problem, orders: readonly number[]): Work => {
  const pieces = piecesNow(problem);
  const left = problem.castings.map((_, c) => {
    const asked = orders.reduce(
      (n, o) => n + (problem.orders[o]!.pieces.find(({ casting }) => casting === c)?.count ?? 0),
      0,
    );
    const there = pieces.filter((p) => p.casting === c && p.aside === NONE && p.readyAt <= problem.now).length;
    return Math.max(0, asked - there);
  });
  return {
    at: problem.now,
    moulds: mouldsNow(problem),
    pieces,
    used: problem.materials.map(() => 0),
    pours: 0,
    left,
    packedAt: problem.orders.map(() => NONE),
    done: null,
  };
};

/** Whether an order may have a piece at all. */
export const mayHave = ({ orders }: Problem, order: number, { aside, begunAt, usedBy }: Piece): boolean =>
  usedBy === NONE && (aside === NONE || aside === order) && orders[order]!.from <= begunAt;
