import type { Context } from 'hono';
import { Hono } from 'hono';
import { PRICES, PRICES_TABLE, SESSION_COSTS } from '../../views/money/money-text.ts';
import { PricesPage } from '../../views/money/prices-page.tsx';
import { SessionCostsPage } from '../../views/money/session-costs-page.tsx';
import { COSTS, CostsPage } from '../../views/yard/costs-page.tsx';
import { YARD } from '../../views/yard/sections.ts';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { editCosts, showCosts } from '../usecases/money/edit-costs.ts';
import { priceKit } from '../usecases/money/price-kit.ts';
import { priceTable } from '../usecases/money/price-table.ts';
import { showPrices } from '../usecases/money/show-prices.ts';
import { showSessionCosts } from '../usecases/money/show-session-costs.ts';
import type { RefusedForm } from '../usecases/plan/save-edit.ts';
import { asSent, atOnce, type FormRoute, formPage } from './form-route.tsx';
import { formsOnPage } from './forms-on-page.tsx';
import { doneNotice } from './notice.ts';
import { page } from './page.tsx';
import { saveFile } from './save-file.ts';
import type { Screens } from './screens.ts';

const costs: FormRoute<null> = {
  path: COSTS,
  save: atOnce(asSent, editCosts),
  next: () => YARD,
  show: async (_c, context, state) => {
    const model = await showCosts(context);
    const frame = { title: 'What work costs', at: 'yard', yardName: model.yardName } as const;
    return { frame, content: <CostsPage model={model} state={state} /> };
  },
};

const kitOf = (c: Context): string => c.req.param('kit') ?? '';

const pricesPage = async (c: Context, context: UseCaseContext, refused: RefusedForm | null) => {
  const model = await showPrices(context);
  const frame = { title: 'Prices', at: 'orders', yardName: model.yardName } as const;
  return { frame, content: <PricesPage model={model} notice={await doneNotice(c, context)} refused={refused} /> };
};

const price = {
  save: atOnce(asSent, (context, fields, c: Context) => priceKit(context, kitOf(c), fields)),
  form: (_: object, c: Context) => kitOf(c),
};

/** What costs are reckoned by, what is asked for kits, and what sessions cost. */
export const priceRoutes = (screens: Screens): Hono =>
  new Hono()
    .get(PRICES_TABLE, async (c) => saveFile(c, await priceTable(screens.context())))
    .get(SESSION_COSTS, async (c) => {
      const model = await showSessionCosts(screens.context());
      const frame = { title: 'What sessions cost', at: 'orders', yardName: model.yardName } as const;
      return page(c, frame, <SessionCostsPage model={model} />);
    })
    .route('/', formPage(screens, costs))
    .route(
      '/',
      formsOnPage(screens, { path: PRICES, under: `${PRICES}/:kit`, show: pricesPage, next: () => PRICES }, { price }),
    );
