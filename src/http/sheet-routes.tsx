import { Hono } from 'hono';
import { EVENING } from '../../views/today/evening-card.tsx';
import { EveningPage } from '../../views/today/evening-page.tsx';
import { SHEET, SheetPage } from '../../views/today/sheet-page.tsx';
import { showEvening } from '../usecases/today/show-evening.ts';
import { showSheet } from '../usecases/today/show-sheet.ts';
import { page } from './page.tsx';
import type { Screens } from './screens.ts';

/** The next session on a sheet of paper, and what is got ready the evening before. */
export const sheetRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.get(SHEET, async (c) => {
    const model = await showSheet(context());
    const frame = { title: 'Sheet for the wall', at: 'today', yardName: model.yardName, place: 'yard' } as const;
    return page(c, frame, <SheetPage model={model} />);
  });
  routes.get(EVENING, async (c) => {
    const model = await showEvening(context());
    const frame = { title: 'The evening before', at: 'today', yardName: model.yardName, place: 'yard' } as const;
    return page(c, frame, <EveningPage model={model} />);
  });
  return routes;
};
