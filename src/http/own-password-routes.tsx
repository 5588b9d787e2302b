import { type Context, Hono } from 'hono';
import type { Person } from '../../shared/person.ts';
import { OwnPasswordPage } from '../../views/access/own-password-page.tsx';
import { NewPasskeyPage } from '../../views/access/passkeys.tsx';
import { OWN_PASSKEYS, OWN_PASSWORD } from '../../views/access/paths.ts';
import { changeOwnPassword } from '../usecases/access/own-password.ts';
import {
  askForPasskey,
  keepPasskey,
  type PasskeyPlace,
  passkeyFacts,
  passkeyPlace,
  takePasskeyOff,
} from '../usecases/access/passkeys.ts';
import { type Outcome, refuse } from '../usecases/core/context.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { answering, heldChallenges, OPEN_TOO_LONG } from './challenges.ts';
import { missing } from './failures.tsx';
import { errorsByField, readForm } from './form.ts';
import { page } from './page.tsx';
import type { Screens } from './screens.ts';
import { rememberSession } from './session-cookie.ts';
import { personAt, startOf } from './signed-in.ts';
import { tooMany } from './tries.ts';

const NO_PLACE = 'No passkey can be made for this address: it takes a name by https.';

/** A password and passkeys of one's own. None of it is a change of the yard. */
export const ownPasswordRoutes = (screens: Screens): Hono => {
  const { context, addressOf, tries } = screens;
  const routes = new Hono();
  const challenges = heldChallenges();
  const placeOf = (c: Context): PasskeyPlace | null => passkeyPlace(addressOf(c, '/'));
  const shown = async (c: Context, { id, name }: Person, errors: Record<string, string> = {}, device = '') => {
    const passkeys = await passkeyFacts(context(), id);
    const content = <OwnPasswordPage {...{ name, passkeys, hasPlace: placeOf(c) !== null, device, errors }} />;
    const status = Object.keys(errors).length > 0 ? 422 : 200;
    return page(c, { title: 'Your password' }, content, { status });
  };
  /** What takes one's own password is tried as often as signing in; what was refused for something else is no try of it. */
  const tried = async <T,>({ name }: Person, field: string, work: () => Promise<Outcome<T>>): Promise<Outcome<T>> => {
    const wait = tries.begin(name, context().now);
    if (wait > 0) return refuse(field, tooMany(wait));
    const outcome = await work();
    if (outcome.ok) tries.right(name);
    else if (outcome.faults.every(({ path }) => path !== field)) tries.takeBack(name);
    return outcome;
  };
  /** Only where somebody has signed in. */
  const mine =
    (act: (c: Context, person: Person) => Response | Promise<Response>) =>
    (c: Context): Response | Promise<Response> => {
      const person = personAt(c);
      return person ? act(c, person) : missing(c);
    };
  routes.get(
    OWN_PASSWORD,
    mine((c, person) => shown(c, person)),
  );
  routes.post(
    OWN_PASSWORD,
    mine(async (c, person) => {
      const { before = '', password = '' } = await readForm(c);
      const secret = await tried(person, 'before', () => changeOwnPassword(context(), person, { before, password }));
      if (!secret.ok) return shown(c, person, errorsByField(secret.faults));
      rememberSession(c, secret.value, screens);
      return c.redirect(startOf(person), 303);
    }),
  );
  routes.post(
    OWN_PASSKEYS,
    mine(async (c, person) => {
      const [place, { device = '', own = '' }] = [placeOf(c), await readForm(c)];
      if (!place) return shown(c, person, { device: NO_PLACE }, device);
      const challenge = await challenges.make(`for ${person.id}`, context().now);
      const asked = await tried(person, 'own', () =>
        askForPasskey(context(), person, { device, own }, place, challenge),
      );
      if (!asked.ok) return shown(c, person, errorsByField(asked.faults), device);
      return page(c, { title: 'A new passkey' }, <NewPasskeyPage {...asked.value} />);
    }),
  );
  routes.post(
    `${OWN_PASSKEYS}/made`,
    mine(async (c, person) => {
      const [place, { device = '', answer = '' }] = [placeOf(c), await readForm(c)];
      if (!place) return shown(c, person, { device: NO_PLACE }, device);
      const now = context();
      const { isChallenge, isOver } = answering(challenges, `for ${person.id}`, now.now);
      const kept = await keepPasskey(now, person.id, { device, answer }, place, { isChallenge });
      if (kept.ok) return c.redirect(OWN_PASSWORD, 303);
      return shown(c, person, isOver() ? { device: OPEN_TOO_LONG } : errorsByField(kept.faults), device);
    }),
  );
  routes.post(
    `${OWN_PASSKEYS}/removed`,
    mine(async (c, person) => {
      await takePasskeyOff(context(), person.id, wholeTyped((await readForm(c)).passkey) ?? 0);
      return c.redirect(OWN_PASSWORD, 303);
    }),
  );
  return routes;
};
