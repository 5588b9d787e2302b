import type { Minute } from '../../../shared/time.ts';
import { curedAt, outAt } from '../book/curing-times.ts';
import type { Had } from './deal.ts';
import type { DecoderState } from './decoder-state.ts';
import type { FixedPour } from './fixed-batch.ts';
import { NONE, type Problem } from './problem.ts';

/** An order that pieces are dealt to: when it needs its pieces, and how many of a casting nothing is dealt to yet. */
export interface Needing {
  order: number;
  by: Minute;
  left: Map<number, number>;
}

/** Pieces that are there, finished or in one mould. */
interface Piece {
  lot: number;
  piece: number;
  count: number;
  readyAt: Minute;
  /** Set aside for it; NONE for any. */
  only: number;
}

/** A deal while it is being made up. */
export class Dealing {
  readonly pours = new Map<FixedPour, number>();
  readonly lots: { lot: number; order: number; count: number }[] = [];
  readonly pieces: { piece: number; order: number }[] = [];
  readonly parts: { order: number; at: Minute }[];
  readonly had = new Map<number, Map<number, Had>>();

  constructor({ orders, now }: Problem, needing: readonly Needing[]) {
    // One that was complete before, and is still here, has its parts all the same.
    const unpacked = needing.filter(({ order }) => orders[order]!.packMinutes === 0);
    this.parts = unpacked.map(({ order, by }) => ({ order, at: Math.max(by, now) }));
  }

  add({ order, left }: Needing, casting: number, what: keyof Had, count = 1): void {
    left.set(casting, left.get(casting)! - count);
    const own = this.had.get(order) ?? new Map<number, Had>();
    const had = own.get(casting) ?? { lots: 0, inMoulds: 0, pours: 0 };
    own.set(casting, { ...had, [what]: had[what] + count });
    this.had.set(order, own);
  }
}

/** When the piece in a mould is ready that is stripped as the plan has it. */
const readyAsFixed = ({ castings, mixes, inMould, fixed }: Problem, piece: number, soonest: Minute): Minute => {
  const { mould, casting, filledAt } = inMould[piece]!;
  const strip = fixed.stripNow.get(mould);
  const { mix, stripMinutes } = castings[casting]!;
  return strip === undefined ? soonest : Math.max(strip + stripMinutes, curedAt(mixes[mix]!, filledAt));
};

/** What is there of a casting and comes out of its mould, the one that is ready last first. */
const piecesOf = ({ problem, lastStrip }: DecoderState, casting: number): Piece[] => {
  const { there, finished, inMould, castings, mixes } = problem;
  const underWay = new Map<number, number>();
  for (const { finished: lot, count } of problem.begun.packs.flatMap(({ lots }) => lots))
    underWay.set(lot, (underWay.get(lot) ?? 0) + count);
  return there.byCasting[casting]!.flatMap(({ lot, piece, readyAt }): Piece[] => {
    if (lot !== NONE) {
      const { count, order } = finished[lot]!;
      return [{ lot, piece, count: count - (underWay.get(lot) ?? 0), readyAt, only: order }];
    }
    const { filledAt, order } = inMould[piece]!;
    if (outAt(mixes[castings[casting]!.mix]!, filledAt) > lastStrip[casting]!) return [];
    return [{ lot, piece, count: 1, readyAt: readyAsFixed(problem, piece, readyAt), only: order }];
  }).sort((a, b) => b.readyAt - a.readyAt);
};

/** Gives one order of these pieces what it needs, those set aside for it first, then what is ready last in time for it. */
const dealCasting = (dealing: Dealing, pieces: readonly Piece[], casting: number, one: Needing): void => {
  for (const only of [one.order, NONE])
    for (const piece of pieces) {
      const count = Math.min(piece.count, one.left.get(casting) ?? 0);
      if (count <= 0 || piece.only !== only || (only === NONE && piece.readyAt > one.by)) continue;
      piece.count -= count;
      if (piece.lot === NONE) {
        dealing.pieces.push({ piece: piece.piece, order: one.order });
        dealing.add(one, casting, 'inMoulds');
      } else {
        dealing.lots.push({ lot: piece.lot, order: one.order, count });
        dealing.add(one, casting, 'lots', count);
      }
    }
};

/** Deals what is there to these orders, the first ones first: what is ready when they need it. */
export const dealPieces = (dealing: Dealing, state: DecoderState, orders: readonly Needing[]): void => {
  for (let casting = 0; casting < state.problem.castings.length; casting++) {
    const pieces = piecesOf(state, casting);
    for (const one of orders) dealCasting(dealing, pieces, casting, one);
  }
};
