import { type Context, Hono } from 'hono';
import { PEOPLE } from '../../views/access/paths.ts';
import { PeoplePage } from '../../views/access/people-page.tsx';
import { makeToken, withdrawToken } from '../usecases/access/api-tokens.ts';
import { invite, letNoMoreIn, showPeople } from '../usecases/access/people.ts';
import { inviteAgain, signOutEverywhere } from '../usecases/access/sign-in.ts';
import { type Outcome, refuse } from '../usecases/core/context.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { errorsByField, readForm } from './form.ts';
import { page } from './page.tsx';
import type { Screens } from './screens.ts';

interface State {
  /** The secret of an invitation that was made just now. */
  secret: string | null;
  /** A token that was made just now. */
  token: string | null;
  typed: Readonly<Record<string, string>>;
  errors: Record<string, string>;
}

const NOTHING: State = { secret: null, token: null, typed: {}, errors: {} };

/** Who may come in. None of it is a change of the yard: who was shut out must not come back by undoing. */
export const peopleRoutes = ({ context, addressOf }: Screens): Hono => {
  const routes = new Hono();
  const shown = async (c: Context, { secret, token, typed, errors }: State) => {
    const model = await showPeople(context());
    const made = secret && addressOf(c, `/invited/${secret}`);
    const status = Object.keys(errors).length > 0 ? 422 : 200;
    const frame = { title: 'Who may come in', at: 'yard', yardName: model.yardName } as const;
    return page(c, frame, <PeoplePage {...{ model, made, token, typed, errors }} />, { status });
  };
  const after = (c: Context, outcome: Outcome<string | null>, typed: State['typed'] = {}) =>
    shown(
      c,
      outcome.ok ? { ...NOTHING, secret: outcome.value } : { ...NOTHING, typed, errors: errorsByField(outcome.faults) },
    );
  const onPerson = (path: string, act: (person: number) => Promise<Outcome<string | null>>) =>
    routes.post(`${PEOPLE}/${path}`, async (c) => {
      const person = wholeTyped((await readForm(c)).person);
      return after(c, person === null ? refuse('person', 'Choose somebody.') : await act(person));
    });
  routes.get(PEOPLE, (c) => shown(c, NOTHING));
  routes.post(PEOPLE, async (c) => {
    const typed = await readForm(c);
    return after(c, await invite(context(), typed), typed);
  });
  routes.post(`${PEOPLE}/tokens`, async (c) => {
    const typed = await readForm(c);
    const token = await makeToken(context(), typed);
    return shown(
      c,
      token.ok ? { ...NOTHING, token: token.value } : { ...NOTHING, typed, errors: errorsByField(token.faults) },
    );
  });
  routes.post(`${PEOPLE}/tokens/withdrawn`, async (c) => {
    await withdrawToken(context(), wholeTyped((await readForm(c)).token) ?? 0);
    return shown(c, NOTHING);
  });
  onPerson('invited-again', async (person) => ({ ok: true, value: await inviteAgain(context(), person) }));
  onPerson('signed-out', async (person) => {
    await signOutEverywhere(context(), person);
    return { ok: true, value: null };
  });
  onPerson('removed', (person) => letNoMoreIn(context(), person));
  return routes;
};
