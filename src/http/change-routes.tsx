import { Hono } from 'hono';
import { ChangesPage } from '../../views/changes/changes-page.tsx';
import { showChanges } from '../usecases/show-changes.ts';
import type { Screens } from './app.ts';
import { wholeTyped } from './form.ts';
import { doneNotice } from './notice.ts';
import { page } from './page.tsx';

export const changeRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.get('/changes', async (c) => {
    const now = context();
    const model = await showChanges(now, wholeTyped(c.req.query('before')) ?? undefined);
    const content = <ChangesPage model={model} notice={await doneNotice(c, now)} />;
    return page(c, { title: 'Changes', yardName: model.yardName }, content);
  });
  return routes;
};
