import { Hono } from 'hono';
import { ChangesPage } from '../../views/changes/changes-page.tsx';
import { NoticeEffect } from '../../views/parts/notice.tsx';
import { showChange } from '../usecases/changes/show-change.ts';
import { showChanges } from '../usecases/changes/show-changes.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { doneNotice } from './notice.ts';
import { page } from './page.tsx';
import type { Screens } from './screens.ts';

export const changeRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.get('/changes', async (c) => {
    const now = context();
    const model = await showChanges(now, wholeTyped(c.req.query('before')) ?? undefined);
    const content = <ChangesPage model={model} notice={await doneNotice(c, now)} />;
    return page(c, { title: 'Changes', at: 'orders', yardName: model.yardName }, content);
  });
  routes.get('/changes/:id/notice', async (c) => {
    const now = context();
    const notice = await showChange(now, wholeTyped(c.req.param('id')) ?? 0);
    if (!notice) return c.notFound();
    const { today } = await showChanges(now);
    return page(c, { title: 'Just done' }, <NoticeEffect notice={notice} today={today} />);
  });
  return routes;
};
