import type { Context } from 'hono';
import type { DoneNotice } from '../../views/parts/notice.tsx';
import { showChange } from '../usecases/changes/show-change.ts';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { dateReading } from '../usecases/plan/date-reading.ts';
import { readDate } from '../usecases/typed/date-typed.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { UNCLEAR_DAY } from './page.tsx';

const MOST_DAYS = 3;

/** How days were read that were typed as two numbers: `?read=5/6`. */
const daysRead = async (c: Context, context: UseCaseContext): Promise<DoneNotice['daysRead']> => {
  const typed = (c.req.queries('read') ?? []).filter((text) => UNCLEAR_DAY.test(text)).slice(0, MOST_DAYS);
  if (typed.length === 0) return [];
  const how = await dateReading(context);
  return typed.flatMap((text) => {
    const read = readDate(text, how);
    return read.ok && read.order ? [{ typed: text, date: read.date, order: read.order }] : [];
  });
};

/** What `?done=12` in the address says was just done, for the top of the page. */
export const doneNotice = async (c: Context, context: UseCaseContext): Promise<DoneNotice | null> => {
  const change = wholeTyped(c.req.query('done'));
  const shown = change === null ? null : await showChange(context, change);
  return shown && { ...shown, daysRead: await daysRead(c, context) };
};
