import type { UnplannedOrder } from '../../../shared/plan.ts';
import { NONE, type Problem } from './problem.ts';
import { asIfKept, type Short, Stock } from './stock.ts';

/** Why an order cannot be planned; `what` and `reason` go into the plan file as they are. */
export type Refusal = Omit<UnplannedOrder, 'order'>;

type Lot = { casting: number; count: number; order: number };

/** So many of a lot are being packed already. */
const packed = ({ begun }: Problem, finished: number): number =>
  begun.packs.flatMap(({ lots }) => lots).reduce((n, lot) => (lot.finished === finished ? n + lot.count : n), 0);

const lotsOf = (problem: Problem): Lot[] => [
  ...problem.finished.map((x, i) => ({ casting: x.casting, count: x.count - packed(problem, i), order: x.order })),
  ...problem.inMould.map((x) => ({ casting: x.casting, count: 1, order: x.order })),
];

/** Takes pieces that are there; returns how many are still to be poured. */
const takeFrom = (lots: Lot[], order: number, casting: number, count: number): number => {
  let left = count;
  for (const aside of [true, false])
    for (const lot of lots) {
      if (lot.casting !== casting || (aside ? lot.order !== order : lot.order !== NONE)) continue;
      const taken = Math.min(left, lot.count);
      lot.count -= taken;
      left -= taken;
    }
  return left;
};

const amountText = (problem: Problem, material: number, quantity: number): string => {
  const { unit, stickMm, inSheets } = problem.yard.materials[material]!;
  const rounded = Math.ceil(quantity * 100 - 1e-6) / 100;
  if (inSheets) return rounded === 1 ? '1 more sheet is needed' : `${rounded} more sheets are needed`;
  if (stickMm !== undefined) return rounded === 1 ? '1 more length is needed' : `${rounded} more lengths are needed`;
  return rounded === 1 ? `1 more ${unit} is needed` : `${rounded} more ${unit} are needed`;
};

/** The refusal of an order for want of so much more of a material, in its own unit, to a hundredth upwards. */
export const materialRefusal = (problem: Problem, { material, quantity, isPastDate }: Short): Refusal => {
  const { id, name } = problem.yard.materials[material]!;
  const reason = isPastDate
    ? `${name} goes past its date before that`
    : `${name} cannot be had: ${amountText(problem, material, quantity)}`;
  return { cause: 'material', what: id, reason };
};

const askFor = (problem: Problem, stock: Stock, order: number, pours: { casting: number; count: number }[]): void => {
  stock.ask();
  for (const { casting, count } of pours) {
    const { mix, kg, perPiece, cuts, sheets } = problem.castings[casting]!;
    const { perBag, yieldKgPerBag } = problem.mixes[mix]!;
    stock.add(perBag, (count * kg) / yieldKgPerBag);
    stock.add(perPiece, count);
    stock.addCuts(cuts.map((x) => ({ ...x, count: x.count * count })));
    stock.addSheets(sheets.map((x) => ({ ...x, count: x.count * count })));
  }
  stock.add(problem.orders[order]!.parts);
  stock.addCuts(problem.orders[order]!.cuts);
};

/**
 * Orders of the sequence that cannot be made beside those before them, whatever the hours (R11): no usable mould makes
 * one of their pieces, or a material cannot be had. What they would have taken is left for the others. By index of the
 * order.
 */
export const refusals = (problem: Problem, sequence: ArrayLike<number>): Map<number, Refusal> => {
  const refused = new Map<number, Refusal>();
  const stock = new Stock(asIfKept(problem.materials), new Int32Array(problem.materials.length));
  let lots = lotsOf(problem);
  for (const order of Array.from(sequence)) {
    if (problem.begun.packs.some((pack) => pack.order === order)) continue;
    const left = lots.map((lot) => ({ ...lot }));
    const pours = problem.orders[order]!.pieces.map(({ casting, count }) => ({
      casting,
      count: takeFrom(left, order, casting, count),
    }));
    const unmade = pours.find((x) => x.count > 0 && problem.castings[x.casting]!.moulds.length === 0);
    if (unmade) {
      const { id, name } = problem.yard.castings[unmade.casting]!;
      refused.set(order, {
        cause: 'mould',
        what: id,
        reason: `no usable mould makes ${name.charAt(0).toLowerCase()}${name.slice(1)}`,
      });
      continue;
    }
    askFor(problem, stock, order, pours);
    const short = stock.shortBy(problem.horizonEnd - 1);
    if (short) {
      refused.set(order, materialRefusal(problem, short));
      continue;
    }
    stock.use(problem.now);
    lots = left;
  }
  return refused;
};
