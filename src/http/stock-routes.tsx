import { Hono } from 'hono';
import { SpokenForPage } from '../../views/stock/spoken-for-page.tsx';
import { SPOKEN_FOR } from '../../views/stock/spoken-for-text.ts';
import { StockBookPage } from '../../views/stock/stock-book-page.tsx';
import { STOCK_BOOK } from '../../views/stock/stock-book-text.ts';
import { showSpokenFor } from '../usecases/stock/show-spoken-for.ts';
import { showStockBook } from '../usecases/stock/show-stock-book.ts';
import { stockBookTable } from '../usecases/stock/stock-book-table.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { page } from './page.tsx';
import { saveFile } from './save-file.ts';
import type { Screens } from './screens.ts';

/** What became of a material, as a page and as a table, and what will. */
export const stockRoutes = ({ context }: Screens): Hono =>
  new Hono()
    .get(STOCK_BOOK, async (c) => {
      const before = wholeTyped(c.req.query('before')) ?? undefined;
      const model = await showStockBook(context(), c.req.query('of') ?? '', before);
      if (!model) return c.notFound();
      const frame = { title: `Stock book: ${model.name}`, at: 'buying', yardName: model.yardName } as const;
      return page(c, frame, <StockBookPage model={model} />);
    })
    .get(SPOKEN_FOR, async (c) => {
      const model = await showSpokenFor(context(), c.req.query('of') ?? '');
      if (!model) return c.notFound();
      const frame = { title: `Spoken for: ${model.name}`, at: 'buying', yardName: model.yardName } as const;
      return page(c, frame, <SpokenForPage model={model} />);
    })
    .get(`${STOCK_BOOK}.csv`, async (c) => {
      const file = await stockBookTable(context(), c.req.query('of') ?? '');
      return file ? saveFile(c, file) : c.notFound();
    });
