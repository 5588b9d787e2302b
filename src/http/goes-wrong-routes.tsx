import { Hono } from 'hono';
import { GoesWrongPage } from '../../views/yard/goes-wrong-page.tsx';
import { GOES_WRONG } from '../../views/yard/goes-wrong-text.ts';
import { showGoesWrong } from '../usecases/yard/show-goes-wrong.ts';
import { page } from './page.tsx';
import type { Screens } from './screens.ts';

/** What goes wrong in the yard, and how often. */
export const goesWrongRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.get(GOES_WRONG, async (c) => {
    const model = await showGoesWrong(context());
    const frame = { title: 'What goes wrong', at: 'yard', yardName: model.yardName } as const;
    return page(c, frame, <GoesWrongPage model={model} />);
  });
  return routes;
};
