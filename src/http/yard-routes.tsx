import { Hono } from 'hono';
import { YARD } from '../../views/yard/sections.ts';
import { YardPage } from '../../views/yard/yard-page.tsx';
import { showYard } from '../usecases/show-yard.ts';
import type { Screens } from './app.ts';
import { doneNotice } from './notice.ts';
import { page } from './page.tsx';

/** The page of the yard: what is there, what is missing, and the way to each section. */
export const yardRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.get(YARD, async (c) => {
    const now = context();
    const model = await showYard(now);
    const content = <YardPage model={model} notice={await doneNotice(c, now)} />;
    return page(c, { title: 'Your yard', at: 'yard', yardName: model.yardName }, content);
  });
  return routes;
};
