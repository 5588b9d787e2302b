import { Hono } from 'hono';
import { TurnsPage } from '../../views/turns/turns-page.tsx';
import { showTurns } from '../usecases/show-turns.ts';
import type { Screens } from './app.ts';
import { wholeTyped } from './form.ts';
import { page } from './page.tsx';

export const turnsRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.get('/turns', async (c) => {
    const model = await showTurns(context());
    const content = <TurnsPage model={model} from={wholeTyped(c.req.query('from')) ?? 0} />;
    return page(c, { title: 'Turns', at: 'turns', yardName: model.yardName, place: 'yard' }, content);
  });
  return routes;
};
