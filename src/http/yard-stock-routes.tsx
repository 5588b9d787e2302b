import type { Context } from 'hono';
import { Hono } from 'hono';
import { StockForm } from '../../views/yard/stock-form.tsx';
import { STOCK, StockPage } from '../../views/yard/stock-page.tsx';
import type { UseCaseContext } from '../usecases/core/context.ts';
import type { FormState } from '../usecases/plan/save-edit.ts';
import { addToStockBook, editMaterial } from '../usecases/yard/edit-material.ts';
import { removeEntry } from '../usecases/yard/remove-entry.ts';
import { showYardStock } from '../usecases/yard/show-yard-stock.ts';
import { missing } from './failures.tsx';
import { doneNotice } from './notice.ts';
import { page } from './page.tsx';
import { formStatus, removal, saveForm } from './save-routes.tsx';
import type { Screens } from './screens.ts';

const frame = (title: string, yardName: string) => ({ title, at: 'yard', yardName }) as const;
const idOf = (c: Context) => c.req.param('material') ?? '';
const back = () => STOCK;

/** What it is called, for the page that says it has to stay. */
const nameOf = async (c: Context, context: UseCaseContext): Promise<string> =>
  (await showYardStock(context)).materials.find(({ id }) => id === idOf(c))?.name ?? 'this material';

const formPage = async (c: Context, context: UseCaseContext, state: FormState, id: string | null) => {
  const model = await showYardStock(context);
  const material = model.materials.find((one) => one.id === id) ?? null;
  if (id !== null && !material) return missing(c);
  const content = <StockForm model={model} entry={material} state={state} />;
  return page(c, frame(material?.name ?? 'Add a material', model.yardName), content, formStatus(state));
};

/** The materials as things of the yard: what they are and how they are bought. */
export const yardStockRoutes = (screens: Screens): Hono => {
  const routes = new Hono();
  routes.get(STOCK, async (c) => {
    const now = screens.context();
    const model = await showYardStock(now);
    const content = <StockPage model={model} notice={await doneNotice(c, now)} />;
    return page(c, frame('Stock and suppliers', model.yardName), content);
  });
  const adding = {
    path: `${STOCK}/new`,
    edit: (_c: Context, typed: Readonly<Record<string, string>>) => addToStockBook(typed),
    show: (c: Context, context: UseCaseContext, state: FormState) => formPage(c, context, state, null),
    after: back,
  };
  const editing = {
    path: `${STOCK}/:material`,
    edit: (c: Context, typed: Readonly<Record<string, string>>) => editMaterial(idOf(c), typed),
    show: (c: Context, context: UseCaseContext, state: FormState) => formPage(c, context, state, idOf(c)),
    after: back,
  };
  routes.route('/', saveForm(screens, adding));
  routes.route('/', saveForm(screens, editing));
  const path = `${STOCK}/:material/remove`;
  routes.route('/', removal(screens, { path, edit: (c) => removeEntry('material', idOf(c)), name: nameOf, back }));
  return routes;
};
