import { Hono } from 'hono';
import { SeasonPage } from '../../views/season/season-page.tsx';
import { SEASON } from '../../views/season/season-text.ts';
import { seasonTable } from '../usecases/season/season-table.ts';
import { showSeason } from '../usecases/season/show-season.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { page } from './page.tsx';
import { saveFile } from './save-file.ts';
import type { Screens } from './screens.ts';

/** How a year went, as a page and as a table. */
export const seasonRoutes = ({ context }: Screens): Hono =>
  new Hono()
    .get(SEASON, async (c) => {
      const model = await showSeason(context(), wholeTyped(c.req.query('year')));
      const frame = { title: 'The season', at: 'yard', yardName: model.yardName } as const;
      return page(c, frame, <SeasonPage model={model} />);
    })
    .get(`${SEASON}.csv`, async (c) => saveFile(c, await seasonTable(context(), wholeTyped(c.req.query('year')))));
