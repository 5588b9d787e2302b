import type { MovedModel } from '../../src/usecases/calendar/show-moved.ts';
import { movedText } from '../words/moved-text.ts';
import { sayIn } from '../words/own-words.ts';

/** As JSON Feed 1.1 (jsonfeed.org) has it: each change that moved a date given, with what it moved. */
export const movedFeed = ({ yardName, today, uidEnding, changes, written }: MovedModel): string => {
  const say = sayIn(written);
  return JSON.stringify({
    version: 'https://jsonfeed.org/version/1.1',
    title: say(`${yardName}: dates that moved`),
    language: written.english === 'US' ? 'en-US' : 'en-GB',
    items: changes.map(({ change, at, words, given, undone }) => ({
      id: `${uidEnding}-${change}`,
      title: say(undone ? `Taken back: ${words}` : words),
      content_text: say(given.map((move) => movedText(move, today)).join('\n')),
      date_published: at,
    })),
  });
};
