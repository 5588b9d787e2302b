import type { Context } from 'hono';
import type { FC } from 'hono/jsx';
import { SCREENS } from '../../views/layout.tsx';
import { PlainPage } from '../../views/plain/plain-page.tsx';
import { SECTIONS } from '../../views/yard/sections.ts';
import { isHeldByOthers, logLines, notWritten, serverAway } from '../usecases/core/log-lines.ts';
import { isApiPath, problem } from './api/problem.ts';
import { ownPath, page, seeDone } from './page.tsx';
import { type Log, requestOf } from './request-log.ts';

const LISTS = [...SECTIONS, ...SCREENS.filter(({ path }) => path !== '/')];

/**
 * Where an address leads nowhere: what it showed may have been removed, so the way on is the list it stood in. Where a change
 * has just removed it, that list says so.
 */
export const missing = (c: Context) => {
  const within = (path: string) => c.req.path.startsWith(`${path}/`);
  const list = LISTS.find(({ path }) => within(path));
  const done = c.req.query('done');
  if (list && done !== undefined) return seeDone(c, list.path, Number(done));
  const at = SCREENS.find(({ path }) => within(path))?.at;
  return page(
    c,
    { title: 'Not found', ...(at ? { at } : {}) },
    <PlainPage happened="There is no such page." back={list?.path} backName={list?.name}>
      The address may be old or mistyped, or what it showed was removed. Nothing was changed.
    </PlainPage>,
    { status: 404 },
  );
};

/** An address that is there, asked in a way that it is not for: a form's own address typed into the browser, say. */
export const notByThis = (c: Context, methods: readonly string[]) => {
  c.header('Allow', methods.join(', '));
  return page(
    c,
    { title: 'Not like this' },
    <PlainPage happened="This address is not asked like that.">
      It is where a form is sent to, or only to be read. Nothing was changed.
    </PlainPage>,
    { status: 405 },
  );
};

export const foreign = (c: Context) =>
  page(
    c,
    { title: 'Not taken' },
    <PlainPage happened="That did not come from one of these pages, so it was not taken.">
      Nothing was changed. Open the page here and do it again.
    </PlainPage>,
    { status: 403 },
  );

export const tooLarge = (c: Context) =>
  page(
    c,
    { title: 'Too large' },
    <PlainPage happened="That was more than a form here can hold.">
      Nothing was changed. Shorten the notes and send it again.
    </PlainPage>,
    { status: 413 },
  );

const HAPPENED = 'Something went wrong in the program.';

const SECONDS_UNTIL_AGAIN = '5';

/** Why nothing can be written just now, and what is to be done about it. */
const HINDRANCES = {
  away: {
    title: 'Out of reach',
    happened: 'The database server does not answer.',
    todo: 'Nothing was changed. What was saved before can still be looked at. Go back, and do it again once the server is there.',
  },
  unknown: {
    title: 'Out of reach',
    happened: 'The database server was lost just then.',
    todo: 'It may have what you sent or not: look there first once it answers, then go back and do it again if it is missing.',
  },
  held: {
    title: 'Busy',
    happened: 'Another program is writing to the database just now.',
    todo: 'Nothing was changed. Wait a moment, go back, and do it again.',
  },
  full: {
    title: 'No room',
    happened: 'There is no room left on the disk.',
    todo: 'Nothing was changed. Everything saved before is there. Make room on the machine that this runs on, go back, and do it again.',
  },
  'read-only': {
    title: 'Read only',
    happened: 'The database may only be read.',
    todo: 'Nothing was changed. Everything saved before is there. See who may write its file and folder on the machine that this runs on, go back, and do it again.',
  },
} as const;

type Hindrance = keyof typeof HINDRANCES;

const hindranceOf = (error: Error): Hindrance | null =>
  isHeldByOthers(error) ? 'held' : (serverAway(error) ?? notWritten(error));

/** A tap that waits is sent again by itself, as when nobody answers (views/assets/waiting.js). */
const hindered = (c: Context, hindrance: Hindrance) => {
  const { title, happened, todo } = HINDRANCES[hindrance];
  c.header('Retry-After', SECONDS_UNTIL_AGAIN);
  const content = (
    <PlainPage happened={happened}>
      {todo}
      <span hidden data-fault />
    </PlainPage>
  );
  return page(c, { title }, content, { status: 503 });
};

const InLog: FC<{ c: Context }> = ({ c }) => <>{`In the log it is request ${requestOf(c)}.`}</>;

/**
 * A fault of the program: the page tells the maker what is safe, the log tells whoever mends it what happened. What another
 * process held for too long is no fault, and neither is a disk that is full or may not be written.
 */
export const fault = (log: Log) => (error: Error, c: Context) => {
  log({ request: requestOf(c), fault: logLines(error) });
  const hindrance = hindranceOf(error);
  if (isApiPath(c.req.path))
    return hindrance ? problem(c, 503, { title: HINDRANCES[hindrance].happened }) : problem(c, 500);
  if (hindrance) return hindered(c, hindrance);
  const asked = (
    <PlainPage
      happened={HAPPENED}
      back={ownPath(c.req.url.slice(new URL(c.req.url).origin.length))}
      backName="Try once more"
    >
      This page could not be shown. Nothing was changed, and everything saved before is there. <InLog c={c} />
    </PlainPage>
  );
  const sent = (
    <PlainPage happened={HAPPENED}>
      What you sent last was not saved; everything before it was. Go back, and try it once more: what you typed is
      there. <InLog c={c} />
      <span hidden data-fault />
    </PlainPage>
  );
  return page(c, { title: 'Something went wrong' }, c.req.method === 'GET' ? asked : sent, { status: 500 });
};
