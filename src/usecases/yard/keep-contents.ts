import type { Tx } from '../../../db/open.ts';
import { setTyped } from '../../../db/stores/figure-store.ts';
import type { FigureOf } from '../../../shared/figure.ts';
import { type ContentsWriting, cutFigure, MOST_CONTENTS, partFigure } from '../typed/contents-typed.ts';
import { typedAnew } from '../typed/figures.ts';

type Texts = Readonly<Record<string, string>>;

interface Kept extends Pick<ContentsWriting, 'list'> {
  /** What the form showed, nothing where it was empty. */
  shown?: Texts;
  /** What was typed until now. */
  typed?: Texts;
}

/** Keeps what was typed with a unit for the parts and cuts of a piece, a kit or a mix, row by row as it has them now. */
export const keepContents = async (
  tx: Tx,
  owner: Pick<FigureOf, 'kind' | 'id'>,
  typed: Texts,
  { shown = {}, typed: before = {}, list }: Kept = {},
): Promise<void> => {
  const named = list ? { list } : {};
  const set = (figure: string, text = '') => setTyped(tx, { ...owner, figure }, text);
  let place = 0;
  for (let row = 0; row < MOST_CONTENTS; row++) {
    const [part, cut] = [typed[`part-${row}`], typed[`cut-${row}`]];
    if (part) {
      const was = part === shown[`part-${row}`] ? before[partFigure(part, named)] : undefined;
      await set(partFigure(part, named), typedAnew(typed, shown, `partQuantity-${row}`) ?? was);
    }
    // A row above it may be gone: then what was typed for it moves up along with it.
    if (cut) await set(cutFigure(place++), typedAnew(typed, shown, `cutLength-${row}`) ?? before[cutFigure(row)]);
  }
};
