import { Hono } from 'hono';
import { SHEET, SheetPage } from '../../views/today/sheet-page.tsx';
import { showSheet } from '../usecases/today/show-sheet.ts';
import { page } from './page.tsx';
import type { Screens } from './screens.ts';

/** The next session on a sheet of paper. */
export const sheetRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.get(SHEET, async (c) => {
    const model = await showSheet(context());
    const frame = { title: 'Sheet for the wall', at: 'today', yardName: model.yardName, place: 'yard' } as const;
    return page(c, frame, <SheetPage model={model} />);
  });
  return routes;
};
