import type { Hono } from 'hono';
import { StockForm } from '../../views/yard/stock-form.tsx';
import { STOCK, StockPage } from '../../views/yard/stock-page.tsx';
import { addToStockBook, editMaterial } from '../usecases/yard/edit-material.ts';
import { removeEntry } from '../usecases/yard/remove-entry.ts';
import { showYardStock, type YardMaterial, type YardStockModel } from '../usecases/yard/show-yard-stock.ts';
import { effectFirst } from './form-route.tsx';
import type { Screens } from './screens.ts';
import { type Entries, effectOn, type Section, sectionRoutes } from './section-routes.tsx';

const section: Section<YardStockModel> = {
  path: STOCK,
  load: showYardStock,
  list: (model, notice) => ({ title: 'Stock and suppliers', content: <StockPage model={model} notice={notice} /> }),
};

const materials: Entries<YardStockModel, YardMaterial> = {
  path: STOCK,
  of: (model) => model.materials,
  form: ({ model, entry, state }) => ({
    title: entry?.name ?? 'Add a material',
    content: <StockForm model={model} entry={entry} state={state} />,
  }),
  add: effectFirst(addToStockBook),
  edit: effectOn(editMaterial),
  remove: effectOn((id) => removeEntry('material', id)),
  called: (material) => material?.name ?? 'this material',
};

/** The materials as things of the yard: what they are and how they are bought. */
export const yardStockRoutes = (screens: Screens): Hono => sectionRoutes(screens, section, materials);
