import { type Context, Hono } from 'hono';
import type { Person } from '../../shared/person.ts';
import { InvitedPage, SIGN_IN, SIGN_IN_BY_PASSKEY, SignInPage } from '../../views/access/sign-in-page.tsx';
import { PlainPage } from '../../views/plain/plain-page.tsx';
import { askToSignIn, passkeyPlace, signInByPasskey } from '../usecases/access/passkeys.ts';
import { followInvitation, invitedBy, signIn, signOut, signOutEverywhere } from '../usecases/access/sign-in.ts';
import { answering, heldChallenges, OPEN_TOO_LONG } from './challenges.ts';
import { missing } from './failures.tsx';
import { firstOwnerPage, isForFirst } from './first-owner-routes.tsx';
import { errorsByField, readForm } from './form.ts';
import { ownPath, page } from './page.tsx';
import type { Screens } from './screens.ts';
import { forgetSession, rememberSession, sessionSecret } from './session-cookie.ts';
import { personAt, startOf } from './signed-in.ts';
import { tooMany } from './tries.ts';

interface Asked {
  typed: string;
  back: string;
  errors: Record<string, string>;
}

/** What a passkey signs in by, while the program runs. */
const challenges = heldChallenges();
const BY_PASSKEY = 'sign in';

/** 401: neither kept by a phone in place of the page that was asked for, nor swapped into one that is open. */
const signInPage = async ({ context, addressOf }: Screens, c: Context, asked: Asked) => {
  const place = passkeyPlace(addressOf(c, '/'));
  const passkey = place && (await askToSignIn(place, await challenges.make(BY_PASSKEY, context().now)));
  return page(c, { title: 'Sign in', isOutside: true }, <SignInPage {...asked} passkey={passkey} />, { status: 401 });
};

/** What whoever has not signed in sees at any address; it leads on to there. Before there is an owner, how to become it. */
export const signInFirst = (screens: Screens) => async (c: Context) =>
  (await isForFirst(screens))
    ? firstOwnerPage(c)
    : signInPage(screens, c, { typed: '', back: c.req.method === 'GET' ? ownPath(c.req.path) : '/', errors: {} });

/** What somebody sees who asks for more than they may. */
export const notYours = (c: Context, { role }: Person) =>
  page(
    c,
    { title: 'Not open to you' },
    <PlainPage happened="That is not open to you." {...(role === 'yard' ? { back: '/today', backName: 'Today' } : {})}>
      Nothing was changed. Ask the owner, who decides what each may do.
    </PlainPage>,
    { status: 403 },
  );

/** How somebody gets in, and out. None of it is a change of the yard. */
export const signInRoutes = (screens: Screens): Hono => {
  const { context, tries } = screens;
  const routes = new Hono();
  const invitedPage = (c: Context, name: string, errors: Record<string, string>) => {
    const status = Object.keys(errors).length > 0 ? 422 : 200;
    return page(
      c,
      { title: 'Choose a password', isOutside: true },
      <InvitedPage {...{ name, errors }} action={c.req.path} />,
      {
        status,
      },
    );
  };
  routes.get(SIGN_IN, async (c) =>
    (await isForFirst(screens))
      ? firstOwnerPage(c)
      : signInPage(screens, c, { typed: '', back: ownPath(c.req.query('back')), errors: {} }),
  );
  routes.post(SIGN_IN, async (c) => {
    const { name = '', password = '', back } = await readForm(c);
    const now = context();
    const again = (errors: Record<string, string>) =>
      signInPage(screens, c, { typed: name, back: ownPath(back), errors });
    const wait = tries.begin(name, now.now);
    if (wait > 0) return again({ password: tooMany(wait) });
    const secret = await signIn(now, name, password);
    if (!secret.ok) return again(errorsByField(secret.faults));
    tries.right(name);
    rememberSession(c, secret.value, screens);
    return c.redirect(ownPath(back), 303);
  });
  routes.post(SIGN_IN_BY_PASSKEY, async (c) => {
    const { answer = '', back } = await readForm(c);
    const [now, place] = [context(), passkeyPlace(screens.addressOf(c, '/'))];
    const { isChallenge, isOver } = answering(challenges, BY_PASSKEY, now.now);
    const secret = place && (await signInByPasskey(now, answer, place, { isChallenge }));
    if (!secret?.ok) {
      const errors = isOver() ? { passkey: OPEN_TOO_LONG } : errorsByField(secret?.faults ?? []);
      return signInPage(screens, c, { typed: '', back: ownPath(back), errors });
    }
    rememberSession(c, secret.value, screens);
    return c.redirect(ownPath(back), 303);
  });
  routes.post('/sign-out', async (c) => {
    await signOut(context(), sessionSecret(c, screens));
    forgetSession(c, screens);
    return c.redirect(SIGN_IN, 303);
  });
  routes.post('/sign-out-everywhere', async (c) => {
    const person = personAt(c);
    if (!person) return missing(c);
    await signOutEverywhere(context(), person.id);
    forgetSession(c, screens);
    return c.redirect(SIGN_IN, 303);
  });
  routes.get('/invited/:secret', async (c) => {
    const person = await invitedBy(context(), c.req.param('secret'));
    return person ? invitedPage(c, person.name, {}) : missing(c);
  });
  routes.post('/invited/:secret', async (c) => {
    const person = await invitedBy(context(), c.req.param('secret'));
    if (!person) return missing(c);
    const secret = await followInvitation(context(), c.req.param('secret'), (await readForm(c)).password ?? '');
    if (!secret.ok) return invitedPage(c, person.name, errorsByField(secret.faults));
    rememberSession(c, secret.value, screens);
    return c.redirect(startOf(person), 303);
  });
  return routes;
};
