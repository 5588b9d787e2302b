import type { Context } from 'hono';
import { MOST_ROWS, rowField } from '../../views/first/asked.ts';

/** The rows of the question in the address; one of nothing chosen where there are none. A row after the first may be empty. */
export const rowsInAddress = (c: Context): { what: string | null; number: string }[] =>
  Array.from({ length: MOST_ROWS }, (_, row) => ({
    what: c.req.query(rowField('what', row)) ?? null,
    number: (c.req.query(rowField('number', row)) ?? '1').trim(),
  })).filter(({ what }, row) => row === 0 || (what !== null && what !== ''));
