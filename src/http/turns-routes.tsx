import { Hono } from 'hono';
import { TurnsPage } from '../../views/turns/turns-page.tsx';
import { SESSIONS_SHOWN } from '../../views/turns/turns-shown.ts';
import { showTurns } from '../usecases/turns/show-turns.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { page } from './page.tsx';
import type { Screens } from './screens.ts';

export const turnsRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.get('/turns', async (c) => {
    const from = wholeTyped(c.req.query('from')) ?? 0;
    const model = await showTurns(context(), { from, count: SESSIONS_SHOWN });
    const mould = wholeTyped(c.req.query('mould')) ?? 0;
    const content = <TurnsPage model={model} from={from} mould={mould} />;
    return page(c, { title: 'Turns', at: 'turns', yardName: model.yardName, place: 'yard' }, content);
  });
  return routes;
};
