import type { Problem } from '../decoder/problem.ts';
import { mayHave, type Piece } from './work.ts';

const isAlike = (a: Piece, b: Piece): boolean =>
  a.readyAt === b.readyAt && a.aside === b.aside && a.begunAt === b.begunAt;

/** Every choice of so many of some pieces, by place; pieces that are alike are taken in turn. */
function* choicesOf(pieces: readonly Piece[], among: readonly number[], count: number): Generator<readonly number[]> {
  if (count === 0) yield [];
  else if (among.length >= count)
    for (const [i, one] of among.entries()) {
      if (among.slice(0, i).some((other) => isAlike(pieces[other]!, pieces[one]!))) continue;
      for (const more of choicesOf(pieces, among.slice(i + 1), count - 1)) yield [one, ...more];
    }
}

/** Every choice of pieces for an order, by place in the list, from its `nth` casting on. */
export function* choicesFor(
  problem: Problem,
  pieces: readonly Piece[],
  order: number,
  nth = 0,
): Generator<readonly number[]> {
  const wanted = problem.orders[order]!.pieces[nth];
  if (!wanted) {
    yield [];
    return;
  }
  const among = pieces.flatMap((p, i) => (p.casting === wanted.casting && mayHave(problem, order, p) ? [i] : []));
  for (const chosen of choicesOf(pieces, among, wanted.count))
    for (const others of choicesFor(problem, pieces, order, nth + 1)) yield [...chosen, ...others];
}

/** By order: when it is complete; and every piece with the order that gets it. */
export interface Dealt {
  completesAt: readonly number[];
  pieces: readonly Piece[];
}

/** All ways to deal pieces to those of the orders that are not packed; no packed one is dealt any. */
export function* dealsOf(
  problem: Problem,
  orders: readonly number[],
  { completesAt, pieces }: Dealt,
): Generator<Dealt> {
  const [order, ...others] = orders;
  if (order === undefined) {
    yield { completesAt, pieces };
    return;
  }
  if (problem.orders[order]!.packMinutes > 0) {
    yield* dealsOf(problem, others, { completesAt, pieces });
    return;
  }
  for (const chosen of choicesFor(problem, pieces, order)) {
    const at = chosen.reduce((t, i) => Math.max(t, pieces[i]!.readyAt), problem.now);
    if (at >= problem.horizonEnd) continue;
    yield* dealsOf(problem, others, {
      completesAt: completesAt.map((t, o) => (o === order ? at : t)),
      pieces: pieces.map((piece, i) => (chosen.includes(i) ? { ...piece, usedBy: order } : piece)),
    });
  }
}
