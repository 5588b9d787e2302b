import { NEVER, type Problem } from '../decoder/problem.ts';

/** What presses in a yard before anything is planned, and what its moulds are set for: what ties between plans are broken by. */
export interface Pressing {
  /** By order: its weight over the days until it is due, today included. */
  urgency: Float64Array;
  /** By casting: 1 and, for those whose moulds have the most turns to make, 2. */
  scarcity: Float64Array;
  /** By mould: the casting it is set for at the beginning, or that is in it. */
  setFor: Int32Array;
}

/** An order without a date is as urgent as one that is due in so many days. */
const A_YEAR = 365;

const urgencies = ({ orders, today }: Pick<Problem, 'orders' | 'today'>): Float64Array =>
  Float64Array.from(orders, ({ weight, aimDay }) => {
    const days = aimDay >= NEVER ? A_YEAR : Math.max(0, aimDay - today);
    return weight / (1 + days);
  });

/** Pieces asked for by the moulds that make them: castings of the very same moulds count as one. */
const piecesByMoulds = ({ orders, castings }: Pick<Problem, 'orders' | 'castings'>): Map<string, number> => {
  const pieces = new Map<string, number>();
  for (const order of orders)
    for (const { casting, count } of order.pieces) {
      const moulds = castings[casting]!.moulds.join();
      pieces.set(moulds, (pieces.get(moulds) ?? 0) + count);
    }
  return pieces;
};

const scarcities = (problem: Pick<Problem, 'orders' | 'castings'>): Float64Array => {
  const pieces = piecesByMoulds(problem);
  const turns = problem.castings.map(({ moulds }) => (pieces.get(moulds.join()) ?? 0) / Math.max(1, moulds.length));
  const most = Math.max(1e-9, ...turns);
  return Float64Array.from(turns, (n) => 1 + n / most);
};

const settings = ({ moulds, inMould }: Pick<Problem, 'moulds' | 'inMould'>): Int32Array => {
  const setFor = Int32Array.from(moulds, (mould) => mould.setFor);
  for (const { mould, casting } of inMould) setFor[mould] = casting;
  return setFor;
};

/**
 * What presses in a yard: its orders by date, its castings by moulds.
 *
 * Example: an order of weight 1 that is due tomorrow is 0.5, one due in nine days 0.1; of two castings with a mould each,
 * 6 pieces and 3 pieces asked for, the first is 2 and the other 1.5.
 */
export const pressingOf = (
  problem: Pick<Problem, 'orders' | 'castings' | 'moulds' | 'inMould' | 'today'>,
): Pressing => ({ urgency: urgencies(problem), scarcity: scarcities(problem), setFor: settings(problem) });
