import type { Hono } from 'hono';
import { seedDemo } from '../../db/demo/larch-row.ts';
import type { Database, Tx } from '../../db/open.ts';
import type { PhotoFolder } from '../../db/photo-folder.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { createApp } from '../../src/http/app.ts';
import type { AskForecast } from '../../src/usecases/core/context.ts';
import { smallYard } from './small-yard.ts';
import { databaseFilled } from './temporary-database.ts';
import { yardContext } from './yard-context.ts';

export interface TestScreens {
  app: Hono;
  database: Database;
  get(path: string, headers?: Record<string, string>): Promise<Response>;
  post(path: string, form: Record<string, string>, headers?: Record<string, string>): Promise<Response>;
  /** Follows the answer to a form as a browser would, and gives the page it leads to. */
  textAfter(answer: Response): Promise<string>;
}

/** The screens over a database as it stands, at an instant; `photos` is where photos are kept, `forecast` who is asked for one: nowhere and nobody without. */
export const screensOn = (
  database: Database,
  now: string,
  { photos, forecast }: { photos?: PhotoFolder | undefined; forecast?: AskForecast } = {},
): TestScreens => {
  const app = createApp({ database, now: () => now, photos, forecast });
  const get = async (path: string, headers = {}) => app.request(path, { headers });
  const post = async (path: string, form: Record<string, string>, headers = {}) =>
    app.request(path, { method: 'POST', body: new URLSearchParams(form), headers });
  const textAfter = async (answer: Response) => {
    if (answer.status !== 303) throw new Error(`Expected a way on, got ${answer.status}: ${await answer.text()}`);
    return textOf(await get(answer.headers.get('Location') ?? ''));
  };
  return { app, database, get, post, textAfter };
};

/** The screens over a yard, driven in this process at the yard's own now. */
export const screensOver = async (yard: YardFile = smallYard()): Promise<TestScreens> => {
  const { database, now } = await yardContext(yard);
  return screensOn(database, now);
};

export const DEMO_NOW = '2027-04-05T07:30:00Z';

/** Larch Row Yard as it stands then, put into an empty database. */
export const withDemo = (tx: Tx) => seedDemo(tx, DEMO_NOW.slice(0, 10), DEMO_NOW);

/** The screens over Larch Row Yard as it stands on the morning of Monday 5 April 2027. */
export const demoScreens = async (): Promise<TestScreens> => {
  return screensOn(await databaseFilled(withDemo), DEMO_NOW);
};

const ENTITIES: Readonly<Record<string, string>> = {
  '&amp;': '&',
  '&#39;': "'",
  '&quot;': '"',
  '&lt;': '<',
  '&gt;': '>',
};

/** What a page says in its `main`, without markup, in single spaces. */
export const textOf = async (answer: Response): Promise<string> => {
  const html = await answer.text();
  const main = /<main[^>]*>([\s\S]*)<\/main>/.exec(html)?.[1] ?? html;
  return main
    .replace(/<[^>]+>/g, ' ')
    .replace(/&(amp|#39|quot|lt|gt);/g, (entity) => ENTITIES[entity] ?? entity)
    .replace(/\s+/g, ' ')
    .replace(/ ([.,:])/g, '$1')
    .trim();
};
