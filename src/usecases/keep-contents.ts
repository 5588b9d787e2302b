import type { Tx } from '../../db/open.ts';
import { setTyped } from '../../db/stores/figure-store.ts';
import type { FigureOf } from '../../shared/figure.ts';
import { worthKeeping } from './amount-typed.ts';
import { type ContentsWriting, cutFigure, MOST_CONTENTS, partFigure } from './contents-typed.ts';

/** Keeps what was typed with a unit for the parts and cuts of a piece, a kit or a mix, row by row as it has them now. */
export const keepContents = async (
  tx: Tx,
  owner: Pick<FigureOf, 'kind' | 'id'>,
  typed: Readonly<Record<string, string>>,
  named: Pick<ContentsWriting, 'list'> = {},
): Promise<void> => {
  const set = (figure: string, text = '') => setTyped(tx, { ...owner, figure }, worthKeeping(text));
  let place = 0;
  for (let row = 0; row < MOST_CONTENTS; row++) {
    const part = typed[`part-${row}`];
    if (part) await set(partFigure(part, named), typed[`partQuantity-${row}`]);
    if (typed[`cut-${row}`]) await set(cutFigure(place++), typed[`cutLength-${row}`]);
  }
};
