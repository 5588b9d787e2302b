import type { English } from '../shared/english.ts';
import { textsIn } from '../shared/texts-in.ts';
import { sayIn } from '../views/words/own-words.ts';

/** What of a plan file or an answer is a sentence; all else is a name, a day or a figure. */
const SENTENCES = ['reason', 'change'];

/** The same value with its sentences said in an English. What stands in `own`, such as a yard file, stays as it was typed there. */
export const sentencesSaid = (value: unknown, english: English, own: unknown): unknown => {
  if (english === 'British') return value;
  const say = sayIn({ english, own: textsIn(own) });
  const said = (one: unknown): unknown => {
    if (Array.isArray(one)) return one.map(said);
    if (one === null || typeof one !== 'object') return one;
    return Object.fromEntries(
      Object.entries(one).map(([key, inside]) => [
        key,
        SENTENCES.includes(key) && typeof inside === 'string' ? say(inside) : said(inside),
      ]),
    );
  };
  return said(value);
};
