import type { Written } from '../../src/usecases/core/own-words.ts';
import { usText } from './us-english.ts';

/** What the program is called, which is a name and no word. */
const ITS_NAME = 'Mould Rota';

const asPattern = (text: string): string => text.replaceAll(/[.*+?^${}()|[\]\\/-]/g, '\\$&');

/** Says a text of the program, and leaves what is in it of the yard's own as it was typed. */
export type Say = (text: string) => string;

/**
 * US English around words of one's own. `own`: all that the yard typed, such as names and notes; what of it would not
 * change anyhow costs nothing. `as`: how it stands in the texts that are said, where not as it was typed.
 */
export const sayAround = (own: Iterable<string>, as: (word: string) => string = (word) => word): Say => {
  const kept = [...new Set([ITS_NAME, ...own])]
    .filter((word) => usText(word) !== word)
    .map(as)
    .sort((a, b) => b.length - a.length);
  const keeping = new RegExp(`(?<![\\p{L}\\d])(${kept.map(asPattern).join('|')})(?![\\p{L}\\d])`, 'u');
  return (text) =>
    text
      .split(keeping)
      .map((part, index) => (index % 2 === 1 ? part : usText(part)))
      .join('');
};

/** Says what the program says in the English that a yard is written in. */
export const sayIn = ({ english, own }: Written): Say => (english === 'US' ? sayAround(own) : (text) => text);
