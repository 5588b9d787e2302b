import type { PlanFile } from '../../../shared/plan.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import { curedAt, outAt } from '../book/curing-times.ts';
import { begunIn } from '../decoder/begun.ts';
import type { Deal, Had } from '../decoder/deal.ts';
import type { DecoderState } from '../decoder/decoder-state.ts';
import type { FixedBatch, FixedPour } from '../decoder/fixed-batch.ts';
import { NONE, type Problem } from '../decoder/problem.ts';

/** An order of the plan that stands: when it needs its pieces, and how many of a casting nothing is dealt to yet. */
interface Needing {
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

/** The orders of a plan that are still to be made here, the one that needs its pieces soonest first. */
const needing = ({ orders, yard, begun }: Problem, near: PlanFile): Needing[] => {
  const packed = new Map(near.orders.map(({ id, packStart, completesAt }) => [id, minuteOf(packStart ?? completesAt)]));
  const underWay = new Set(begun.packs.map(({ order }) => order));
  return orders
    .flatMap(({ pieces }, order): Needing[] => {
      const by = packed.get(yard.orders[order]!.id);
      if (by === undefined || underWay.has(order)) return [];
      return [{ order, by, left: new Map(pieces.map(({ casting, count }) => [casting, count])) }];
    })
    .sort((a, b) => a.by - b.by);
};

/** A deal while it is being made up. */
class Dealing {
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

/** Fixed pours go to whom they were meant for, as far as they are still needed there and come out of their moulds. */
const dealPours = (dealing: Dealing, { problem, lastStrip }: DecoderState, orders: readonly Needing[]): void => {
  const { yard, fixed, castings, mixes } = problem;
  const known = [...(yard.keep?.pours ?? []), ...begunIn(yard).pours];
  const meant = new Map(known.flatMap(({ id, order }) => (order === undefined ? [] : [[id, order] as const])));
  const needs = new Map(orders.map((one) => [yard.orders[one.order]!.id, one]));
  const deal = (batch: FixedBatch, pour: FixedPour): void => {
    const one = needs.get(meant.get(pour.id) ?? '');
    if (!one || !((one.left.get(pour.casting) ?? 0) > 0)) return;
    const out = outAt(mixes[batch.mix]!, pour.fillStart + castings[pour.casting]!.fillMinutes);
    const isForIt = batch.isBegun || problem.orders[one.order]!.from <= batch.start;
    if (!isForIt || out > lastStrip[pour.casting]!) return;
    dealing.pours.set(pour, one.order);
    dealing.add(one, pour.casting, 'pours');
  };
  for (const batch of fixed.batches) for (const pour of batch.pours) deal(batch, pour);
};

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
const dealPieces = (dealing: Dealing, pieces: readonly Piece[], casting: number, one: Needing): void => {
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

/**
 * Who gets what as the plan that stands had it, in the yard as it is now: pours that are still to come go to whom they
 * were for; of what was poured or finished since, every order gets pieces that are ready when it needs them, as far as
 * there are any. Which of these pieces it had does not matter to it. One that is not packed has its parts when it had them.
 */
export const standingDeal = (state: DecoderState, near: PlanFile): Deal => {
  const { problem } = state;
  const orders = needing(problem, near);
  const dealing = new Dealing(problem, orders);
  dealPours(dealing, state, orders);
  for (let casting = 0; casting < problem.castings.length; casting++) {
    const pieces = piecesOf(state, casting);
    for (const one of orders) dealPieces(dealing, pieces, casting, one);
  }
  return dealing;
};
