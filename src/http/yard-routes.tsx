import { Hono } from 'hono';
import { ABOUT, AboutPage } from '../../views/yard/about-page.tsx';
import { YARD } from '../../views/yard/sections.ts';
import { YardPage } from '../../views/yard/yard-page.tsx';
import { editYard, showYardAbout } from '../usecases/yard/edit-yard.ts';
import { showYard } from '../usecases/yard/show-yard.ts';
import { doneNotice } from './notice.ts';
import { page } from './page.tsx';
import { formStatus, type SaveForm, saveForm } from './save-routes.tsx';
import type { Screens } from './screens.ts';

const about: SaveForm<null> = {
  path: ABOUT,
  edit: (_c, typed) => editYard(typed),
  after: () => YARD,
  show: async (c, context, state) => {
    const model = await showYardAbout(context);
    const frame = { title: 'Yard', at: 'yard', yardName: model.yardName } as const;
    return page(c, frame, <AboutPage model={model} state={state} />, formStatus(state));
  },
};

/** The page of the yard: what is there, what is missing, and the way to each section. */
export const yardRoutes = (screens: Screens): Hono => {
  const { context } = screens;
  const routes = new Hono();
  routes.get(YARD, async (c) => {
    const now = context();
    const model = await showYard(now);
    const content = <YardPage model={model} notice={await doneNotice(c, now)} />;
    return page(c, { title: 'Your yard', at: 'yard', yardName: model.yardName }, content);
  });
  routes.route('/', saveForm(screens, about));
  return routes;
};
