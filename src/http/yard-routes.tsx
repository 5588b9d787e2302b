import type { Hono } from 'hono';
import { ABOUT, AboutPage } from '../../views/yard/about-page.tsx';
import { YARD } from '../../views/yard/sections.ts';
import { YardPage } from '../../views/yard/yard-page.tsx';
import { editYard, showYardAbout } from '../usecases/yard/edit-yard.ts';
import { showYard } from '../usecases/yard/show-yard.ts';
import { effectFirst, type FormRoute, formPage, pageRoute, type Show } from './form-route.tsx';
import { doneNotice } from './notice.ts';
import type { Screens } from './screens.ts';
import { whoIsAt } from './this-device.ts';

const about: FormRoute<null> = {
  path: ABOUT,
  save: effectFirst(editYard),
  next: () => YARD,
  show: async (_c, context, state) => {
    const model = await showYardAbout(context);
    const frame = { title: 'Yard', at: 'yard', yardName: model.yardName } as const;
    return { frame, content: <AboutPage model={model} state={state} /> };
  },
};

const yardPage: Show = async (c, context) => {
  const model = await showYard(context);
  const frame = { title: 'Your yard', at: 'yard', yardName: model.yardName } as const;
  return { frame, content: <YardPage model={model} notice={await doneNotice(c, context)} who={whoIsAt(c)} /> };
};

/** The page of the yard: what is there, what is missing, and the way to each section. */
export const yardRoutes = (screens: Screens): Hono =>
  pageRoute(screens, YARD, yardPage).route('/', formPage(screens, about));
