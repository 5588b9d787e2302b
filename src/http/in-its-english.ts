import type { Context } from 'hono';
import { usManifest, usPage } from '../../views/words/us-page.ts';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { writtenIn } from '../usecases/core/own-words.ts';
import { answerAsItIs } from './compressed.ts';
import { isFilePath } from './file-routes.tsx';
import { readForm } from './form.ts';

/** What was just typed or asked: pages repeat it where it could not be taken. */
const justTyped = async (c: Context): Promise<string[]> => {
  const asked = Object.values(c.req.queries()).flat();
  const isForm = c.req.method === 'POST' && !isFilePath(c.req.path);
  return isForm ? [...asked, ...Object.values(await readForm(c))] : asked;
};

/**
 * Puts every page, part of a page and manifest into the English of the yard, whoever made it. Where the store cannot be read,
 * such as in a page that says just that, it stays as it was written.
 */
export const putInItsEnglish = async (c: Context, context: UseCaseContext): Promise<void> => {
  const type = c.res.headers.get('Content-Type') ?? '';
  const isPage = type.startsWith('text/html');
  if (!isPage && !type.startsWith('application/manifest+json')) return;
  const written = await writtenIn(context).catch(() => null);
  if (written?.english !== 'US') return;
  const text = await c.res.text();
  const own = isPage ? [...written.own, ...(await justTyped(c))] : [];
  c.res = new Response(isPage ? usPage(text, own) : usManifest(text), c.res);
  answerAsItIs(c);
};
