import type { FC } from 'hono/jsx';
import { listText } from '../../shared/list-text.ts';
import type { Guessed } from '../../src/usecases/plan/rests-on.ts';

const WORDS: Readonly<Record<Guessed, string>> = { bags: 'the bags', mix: 'the mix' };

/** Beside a date: that it rests on figures nobody has confirmed yet. */
export const RestsOn: FC<{ guessed: readonly Guessed[] }> = ({ guessed }) =>
  guessed.length === 0 ? null : (
    <p class="quiet rests-on">
      Rests on figures to check, of {listText(guessed.map((one) => WORDS[one]))}:{' '}
      <a href="/yard/guesses">confirm them at Your yard</a>.
    </p>
  );
