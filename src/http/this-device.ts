import type { Context } from 'hono';
import { deleteCookie, getCookie, setCookie } from 'hono/cookie';
import { whoTyped } from '../usecases/typed/who-form.ts';
import { personAt } from './signed-in.ts';

/** Also read by what keeps taps while there is no signal (views/assets/acts.js). Other programs of this machine share its cookies. */
export const WHO = 'who-is-here';
/** The longest that browsers keep one: RFC 6265bis, 5.5. */
const KEPT_SECONDS = 400 * 24 * 60 * 60;

const nameIn = (text: string): string | null => {
  const name = whoTyped(text);
  return name.ok ? name.value : null;
};

/** Who has signed in, else the name chosen on the device that asks; null where none is. */
export const whoIsAt = (c: Context): string | null => personAt(c)?.name ?? nameIn(getCookie(c, WHO) ?? '');

/** Who did what is sent: whoever has signed in, else by the name at the time of the tap where it was sent later, else by that of the device. */
export const doneBy = (c: Context, said?: string): { by?: string } => {
  const by = said === undefined || personAt(c) !== null ? whoIsAt(c) : nameIn(said);
  return by === null ? {} : { by };
};

/** Has the device keep a name, or none. A script of ours has to read it, so it is not for the server alone. */
export const rememberWho = (c: Context, name: string | null): void => {
  if (name === null) deleteCookie(c, WHO, { path: '/' });
  else setCookie(c, WHO, name, { path: '/', sameSite: 'Lax', maxAge: KEPT_SECONDS });
};
