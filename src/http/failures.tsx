import type { Context } from 'hono';
import { PlainPage } from '../../views/plain/plain-page.tsx';
import { page } from './page.tsx';

export const missing = (c: Context) =>
  page(
    c,
    { title: 'Not found' },
    <PlainPage happened="There is no such page.">The address may be old or mistyped. Nothing was changed.</PlainPage>,
    { status: 404 },
  );

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

/** A fault of the program: the page tells the maker what is safe, the log tells whoever mends it what happened. */
export const fault = (error: Error, c: Context) => {
  console.error(error);
  return page(
    c,
    { title: 'Something went wrong' },
    <PlainPage happened="Something went wrong in the program.">
      What you sent last was not saved; everything before it was. Go back, and try it once more: what you typed is
      there.
      <span hidden data-fault />
    </PlainPage>,
    { status: 500 },
  );
};
