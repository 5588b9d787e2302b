import type { Tx } from '../../db/open.ts';
import { setTyped } from '../../db/stores/figure-store.ts';
import type { FigureOf } from '../../shared/figure.ts';
import { worthKeeping } from './amount-typed.ts';
import { cutFigure, MOST_CONTENTS, partFigure } from './contents-typed.ts';

/** Keeps what was typed with a unit for the parts and cuts of a piece or a kit, row by row as it has them now. */
export const keepContents = async (
  tx: Tx,
  owner: Pick<FigureOf, 'kind' | 'id'>,
  typed: Readonly<Record<string, string>>,
): Promise<void> => {
  const set = (figure: string, text = '') => setTyped(tx, { ...owner, figure }, worthKeeping(text));
  let place = 0;
  for (let row = 0; row < MOST_CONTENTS; row++) {
    const part = typed[`part-${row}`];
    if (part) await set(partFigure(part), typed[`partQuantity-${row}`]);
    if (typed[`cut-${row}`]) await set(cutFigure(place++), typed[`cutLength-${row}`]);
  }
};
