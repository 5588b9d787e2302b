import type { Context } from 'hono';
import { chosenOf } from '../usecases/typed/search-words.ts';

const LONGEST = 80;

/** What the address looks for: `?find=garden&which=late`. */
export const searched = <T extends string>(c: Context, choices: readonly T[]): { find: string; which: T } => ({
  find: (c.req.query('find') ?? '').trim().slice(0, LONGEST),
  which: chosenOf(choices, c.req.query('which')),
});
