import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DEMO_PAGES } from '../support/demo-pages.ts';
import { fetched } from './fetched.ts';
import { lookingAtDemo } from './served-demo.ts';
import { foundRows, type Row } from './table.ts';

/** The machine's own. */
const JAVA = 'java';

const CHECKER_VERSION = '26.9.27';

/** JSX writes void elements so; it is valid. */
const OF_JSX = 'Trailing slash on void elements has no effect';

interface Message {
  type: string;
  url: string;
  message: string;
  extract?: string;
}

/** What the Nu Html Checker of the W3C, a program of Java, says of the pages of a folder. */
const messagesOf = (folder: string): Promise<Message[]> =>
  new Promise((resolve, reject) => {
    const jar = join(fetched('vnu-jar', CHECKER_VERSION), 'build/dist/vnu.jar');
    const options = ['-Xss8m', '-jar', jar, '--format', 'json', '--skip-non-html', folder];
    execFile(JAVA, options, { maxBuffer: 64_000_000 }, (fault, _, told) => {
      try {
        resolve((JSON.parse(told) as { messages: Message[] }).messages);
      } catch {
        reject(fault ?? new Error(`The checker said nothing that can be read: ${told.slice(0, 200)}`));
      }
    });
  });

/** Every page of the demo as the W3C's checker of HTML reads it: what is wrong, once for each sentence of the checker's. Needs Java. */
export const htmlRows = async (): Promise<Row[]> => {
  const folder = mkdtempSync(join(tmpdir(), 'pages-'));
  try {
    await lookingAtDemo(async (url) => {
      for (const [at, path] of DEMO_PAGES.entries())
        writeFileSync(join(folder, `${at}.html`), await (await fetch(url + path)).text());
    });
    const messages = await messagesOf(folder);
    return foundRows(
      `${DEMO_PAGES.length} pages`,
      messages
        .filter(({ message }) => !message.startsWith(OF_JSX))
        .map(({ type, message, url, extract = '' }) => ({
          rule: `${type}: ${message}`,
          where: `${DEMO_PAGES[Number(/(\d+)\.html$/.exec(url)?.[1])]}: ${extract}`,
        })),
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};
