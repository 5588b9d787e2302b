import type { Context } from 'hono';
import type { Child } from 'hono/jsx';
import { Frame, type FrameProps } from '../../views/layout.tsx';
import { yieldThread } from '../usecases/core/yield-thread.ts';
import { assetVersion } from './assets.ts';
import { leadToFaults } from './lead-to-faults.ts';
import { minutesAwayAt } from './server-away.ts';
import { personAt } from './signed-in.ts';

export type PageFrame = Omit<FrameProps, 'assetVersion' | 'children' | 'person' | 'minutesAway'>;
export type PageStatus = 200 | 401 | 403 | 404 | 405 | 409 | 413 | 422 | 500 | 503;

/** htmx asks for a part of a page by this header; everything else gets the page. */
const wantsFragment = (c: Context): boolean => c.req.header('HX-Request-Type') === 'partial';

/** htmx asks for the part of a page that moves, and not for all of its `main`, as it does after a form changed something. */
export const wantsPart = (c: Context): boolean => wantsFragment(c) && !c.req.header('HX-Target')?.endsWith('#page');

/** What takes longer than this to find out is left out of a page at first, which asks for it by itself. */
export const FIRST_PAINT_MS = 100;

/** The text of what is to be shown. A long list in it is drawn bit by bit, so that others are let in. */
const drawn = async (content: Child): Promise<string> => leadToFaults(String(await (<>{content}</>).toString()));

/**
 * Answers with a page, or with what stands in the page's `main` alone when htmx asked for a part of it.
 * The one place where that is decided.
 */
export const page = async (
  c: Context,
  frame: PageFrame,
  content: Child,
  { status = 200 }: { status?: PageStatus } = {},
): Promise<Response> => {
  c.header('Vary', 'HX-Request-Type, HX-Target');
  await yieldThread();
  if (wantsFragment(c)) return c.html(await drawn(content), status);
  const whole = (
    <Frame {...frame} person={personAt(c)} minutesAway={minutesAwayAt(c)} assetVersion={assetVersion}>
      {content}
    </Frame>
  );
  return c.html(`<!doctype html>${await drawn(whole)}`, status);
};

/** A path of our own, or "/" when it leads anywhere else. */
export const ownPath = (path: string | undefined): string => (path && /^\/(?![/\\])[^\s\\]*$/.test(path) ? path : '/');

/** Fields in which a day is typed, on whatever page. */
const DAY_FIELDS = [
  'wantedOn',
  'notBefore',
  'promisedOn',
  'heldUntil',
  'repairedOn',
  'partRepairedOn',
  'on',
  'date',
  'from',
  'to',
  'until',
  'paidOn',
];

/** Days typed as two numbers: the page that comes next says how each was read. */
const unclearDays = (typed: Readonly<Record<string, string>>): string[] =>
  DAY_FIELDS.flatMap((name) => typed[name] ?? []).filter((text) => UNCLEAR_DAY.test(text));

export const UNCLEAR_DAY = /^\d{1,2}[/-]\d{1,2}([/-]\d{2,4})?$/;

/** After a change: to a page that says what was done, so that loading it again does nothing twice. */
export const seeDone = (
  c: Context,
  path: string,
  change: number,
  typed: Readonly<Record<string, string>> = {},
): Response => {
  const [place, query = ''] = ownPath(path).split('?') as [string, string?];
  const search = new URLSearchParams(query);
  search.set('done', String(change));
  search.delete('read');
  for (const text of new Set(unclearDays(typed))) search.append('read', text);
  return c.redirect(`${place}?${search}`, 303);
};
