import type { Context } from 'hono';
import type { UseCaseContext } from '../usecases/context.ts';
import { type ShownChange, showChange } from '../usecases/show-change.ts';
import { wholeTyped } from './form.ts';

/** What `?done=12` in the address says was just done, for the top of the page. */
export const doneNotice = async (c: Context, context: UseCaseContext): Promise<ShownChange | null> => {
  const change = wholeTyped(c.req.query('done'));
  return change === null ? null : showChange(context, change);
};
