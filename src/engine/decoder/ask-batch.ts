import type { Problem } from './problem.ts';
import type { Stock } from './stock.ts';

/** Asks the stock for all that one batch takes at its start (R10): its bags' materials, and its pieces' own and cuts. */
export const askForBatch = (
  { mixes, castings }: Pick<Problem, 'mixes' | 'castings'>,
  stock: Stock,
  batch: { mix: number; bags: number; pours: readonly { casting: number }[] },
): void => {
  stock.ask();
  stock.add(mixes[batch.mix]!.perBag, batch.bags);
  for (const { casting } of batch.pours) {
    stock.add(castings[casting]!.perPiece);
    stock.addCuts(castings[casting]!.cuts);
  }
};
