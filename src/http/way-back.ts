import type { Context } from 'hono';
import type { FormFields } from '../usecases/typed/form-fields.ts';

/** Parts of an address that say what was done, and nothing that was typed. */
const NOT_TYPED = ['done', 'read', 'back'];

/** The page `to`, with the way back to a form that was left half filled in: its address carries what was typed in it. */
export const withWayBack = (to: string, form: string, typed: FormFields): string => {
  const filled = Object.entries(typed).filter(([, text]) => text !== '');
  return `${to}?${new URLSearchParams({ back: `${form}?${new URLSearchParams(filled)}` })}`;
};

/** Where a form leads once it is saved, or left: to the one under `path` that was left for it; null where none was. */
export const wayBack = (c: Context, path: string): string | null => {
  const back = c.req.query('back') ?? '';
  return back.startsWith(`${path}/`) && /^[^\s\\]+$/.test(back) ? back : null;
};

/** What a form that was come back to had in it; null where its address carries nothing. */
export const typedInAddress = (c: Context): FormFields | null => {
  const typed = Object.entries(c.req.query()).filter(([name]) => !NOT_TYPED.includes(name));
  return typed.length === 0 ? null : Object.fromEntries(typed);
};
