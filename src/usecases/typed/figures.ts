import type { Tx } from '../../../db/open.ts';
import {
  addGuesses,
  dropFigures,
  dropGuess,
  guessesOfYard,
  setTyped,
  typedOf,
} from '../../../db/stores/figure-store.ts';
import type { FigureOf } from '../../../shared/figure.ts';
import type { Reading } from '../../engine/units/reading.ts';
import { worthKeeping } from './amount-typed.ts';

type Owner = Pick<FigureOf, 'kind' | 'id'>;

/** What the forms know of the figures of one thing: which are guesses, and how each was typed. */
export interface KnownFigures {
  guesses: string[];
  typed: Readonly<Record<string, string>>;
}

export const figuresOf = async (tx: Tx, { kind, id }: Owner): Promise<KnownFigures> => ({
  guesses: (await guessesOfYard(tx)).filter((one) => one.kind === kind && one.id === id).map(({ figure }) => figure),
  typed: await typedOf(tx, { kind, id }),
});

/** As it was typed, for as long as that comes to what is stored; otherwise as the yard would write it. */
export const figureShown = (
  typed: string | undefined,
  stored: number,
  read: (text: string) => Reading<number>,
  write: (stored: number) => string,
): string => {
  if (typed === undefined) return write(stored);
  const meant = read(typed);
  return meant.ok && Math.abs(meant.value - stored) < 1e-9 * Math.max(1, Math.abs(stored)) ? typed : write(stored);
};

type Texts = Readonly<Record<string, string>>;

/**
 * What is to be kept of a field as it was typed: undefined where it came back as the form showed it, since nobody typed
 * that; '' where the figure says it all.
 */
export const typedAnew = (typed: Texts, shown: Texts, field: string): string | undefined => {
  const text = typed[field] ?? '';
  return text === (shown[field] ?? '') ? undefined : (worthKeeping(text) ?? '');
};

/** A figure that was saved: what it was, what it is, and for a measure that was typed anew the text of it. */
export interface SavedFigure {
  figure: string;
  before: unknown;
  after: unknown;
  typed?: string | undefined;
}

/** Keeps what was typed; a figure that is another one now is no guess any more. */
export const keepFigures = async (tx: Tx, owner: Owner, figures: readonly SavedFigure[]): Promise<void> => {
  for (const { figure, before, after, typed } of figures) {
    if (typed !== undefined) await setTyped(tx, { ...owner, figure }, typed || null);
    if (JSON.stringify(before) !== JSON.stringify(after)) await dropGuess(tx, { ...owner, figure });
  }
};

/** The figures of a thing that is called otherwise now go with it. */
export const renameFigures = async (tx: Tx, owner: Owner, id: string): Promise<void> => {
  const { guesses, typed } = await figuresOf(tx, owner);
  await dropFigures(tx, owner);
  await addGuesses(
    tx,
    guesses.map((figure) => ({ kind: owner.kind, id, figure })),
  );
  for (const [figure, text] of Object.entries(typed)) await setTyped(tx, { kind: owner.kind, id, figure }, text);
};
