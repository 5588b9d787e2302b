import { type Context, Hono } from 'hono';
import { FIRST_OWNER, FirstOwnerPage } from '../../views/access/first-owner-page.tsx';
import { SIGN_IN } from '../../views/access/sign-in-page.tsx';
import { becomeFirstOwner, hasOwner } from '../usecases/access/first-owner.ts';
import { errorsByField, readForm } from './form.ts';
import { page } from './page.tsx';
import type { Screens } from './screens.ts';
import { rememberSession } from './session-cookie.ts';
import { tooMany } from './tries.ts';

/** True as long as whoever has the code that was shown at the start may become the owner. */
export const isForFirst = async ({ context, firstCode }: Screens): Promise<boolean> =>
  firstCode !== null && !(await hasOwner(context()));

const NOTHING_TYPED = { code: '', name: '' };

/** 401, as where somebody has to sign in. */
export const firstOwnerPage = (c: Context, typed = NOTHING_TYPED, errors: Record<string, string> = {}) =>
  page(c, { title: 'The first visit', isOutside: true }, <FirstOwnerPage {...{ typed, errors }} />, { status: 401 });

/** Tries of the code are counted together, whoever makes them. */
const ALL = 'the code';

/** How the first owner gets in. It is no change of the yard. */
export const firstOwnerRoutes = (screens: Screens): Hono => {
  const routes = new Hono();
  const { tries } = screens;
  routes.get(FIRST_OWNER, async (c) => ((await isForFirst(screens)) ? firstOwnerPage(c) : c.redirect(SIGN_IN, 303)));
  routes.post(FIRST_OWNER, async (c) => {
    const { firstCode } = screens;
    if (firstCode === null || !(await isForFirst(screens))) return c.redirect(SIGN_IN, 303);
    const { code = '', name = '', password = '' } = await readForm(c);
    const now = screens.context();
    const wait = tries.begin(ALL, now.now);
    if (wait > 0) return firstOwnerPage(c, { code, name }, { code: tooMany(wait) });
    const secret = await becomeFirstOwner(now, firstCode, { code, name, password });
    const errors = secret.ok ? {} : errorsByField(secret.faults);
    if (errors.code === undefined) tries.right(ALL);
    if (!secret.ok) return firstOwnerPage(c, { code, name }, errors);
    rememberSession(c, secret.value, screens);
    return c.redirect('/', 303);
  });
  return routes;
};
