import { expect, test } from 'vitest';
import { filesUnder } from '../support/source-files.ts';

/** What no page, notice or message may say of a piece or a kit: nobody here has tested one. */
const NEVER_SAID = /guarante|certif|frost-?proof|load-?bearing|to a standard/i;

/** The words of a source file that reach a reader: its comments are for developers. */
const said = (text: string): string => text.replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '');

test.each(['views', 'src/usecases', 'src/http', 'db/demo'])('nothing in %s says what nobody has tested', (folder) => {
  const files = filesUnder(folder);
  expect(files.length).toBeGreaterThan(3);
  expect(files.filter(({ text }) => NEVER_SAID.test(said(text))).map(({ path }) => path)).toEqual([]);
});
