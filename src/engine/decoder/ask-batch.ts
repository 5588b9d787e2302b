import { type Taker, takeForBatch } from '../book/goods.ts';
import type { SheetCuts } from './open-sheets.ts';
import type { Problem } from './problem.ts';

/** Asks the stock for all that one batch takes at its start (R10): its bags' materials, and its pieces' own and cuts. */
export const askForBatch = (
  { mixes, castings }: Pick<Problem, 'mixes' | 'castings'>,
  stock: Taker<number, SheetCuts> & { ask(): void },
  { mix, bags, pours }: { mix: number; bags: number; pours: readonly { casting: number }[] },
): void => {
  stock.ask();
  takeForBatch(stock, mixes[mix]!, bags, castings, pours);
};
