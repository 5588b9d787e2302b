import { dropGuess, guessesOfYard } from '../../../db/stores/figure-store.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';

/** A figure that the maker says is right, wherever it is guessed: of every length, or of every mix. */
export const confirmGuess = (
  context: UseCaseContext,
  { kind, figure }: { kind: string; figure: string },
): Promise<Outcome<Changed<{ count: number }>>> =>
  changing(
    context,
    { kind: 'guess confirmed', words: ({ count }) => `${count === 1 ? 'A figure' : `${count} figures`} confirmed` },
    async (tx) => {
      const same = (await guessesOfYard(tx)).filter((guess) => guess.kind === kind && guess.figure === figure);
      if (same.length === 0) return refuse('figure', 'That is no figure to check any more. Nothing was changed.');
      for (const guess of same) await dropGuess(tx, guess);
      return done({ count: same.length });
    },
  );
