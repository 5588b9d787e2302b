import type { Context } from 'hono';
import { Hono } from 'hono';
import { PlainPage } from '../../views/plain/plain-page.tsx';
import type { Changed } from '../usecases/changing.ts';
import type { Outcome } from '../usecases/context.ts';
import { fixHours } from '../usecases/fix-hours.ts';
import { planSessionAnew } from '../usecases/plan-session-anew.ts';
import type { Screens } from './app.ts';
import { readForm, wholeTyped } from './form.ts';
import { page, seeDone } from './page.tsx';

const BACK = '/today';

const answered = (c: Context, outcome: Outcome<Changed<unknown>>): Response | Promise<Response> => {
  if (outcome.ok) return seeDone(c, BACK, outcome.value.change);
  const refused = (
    <PlainPage happened="That was not done." back={BACK}>
      {outcome.faults.map(({ message }) => message).join(' ')}
    </PlainPage>
  );
  return page(c, { title: 'Not done' }, refused, { status: 422 });
};

/** What is fixed of the next session: let go of once, or from how long ahead. */
export const fixedRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.post('/fixed/anew', async (c) => {
    const { session = '' } = await readForm(c);
    return answered(c, await planSessionAnew(context(), session));
  });
  routes.post('/fixed/hours', async (c) => {
    const { hours } = await readForm(c);
    return answered(c, await fixHours(context(), wholeTyped(hours)));
  });
  return routes;
};
