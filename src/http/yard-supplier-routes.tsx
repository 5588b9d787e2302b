import type { Hono } from 'hono';
import { SupplierForm } from '../../views/yard/supplier-form.tsx';
import { SUPPLIERS, SuppliersPage } from '../../views/yard/suppliers-page.tsx';
import { addSupplier, editSupplier, removeSupplierEntry } from '../usecases/yard/edit-supplier.ts';
import { type SuppliersModel, showSuppliers, type YardSupplier } from '../usecases/yard/show-suppliers.ts';
import { effectFirst } from './form-route.tsx';
import type { Screens } from './screens.ts';
import { type Entries, effectOn, type Section, sectionRoutes } from './section-routes.tsx';

const section: Section<SuppliersModel> = {
  path: SUPPLIERS,
  load: showSuppliers,
  list: (model, notice) => ({ title: 'Suppliers', content: <SuppliersPage model={model} notice={notice} /> }),
};

const suppliers: Entries<SuppliersModel, YardSupplier> = {
  path: SUPPLIERS,
  of: (model) => model.suppliers,
  form: ({ model, entry, state }) => ({
    title: entry?.name ?? 'Add a supplier',
    content: <SupplierForm model={model} entry={entry} state={state} />,
  }),
  add: effectFirst(addSupplier),
  edit: effectOn(editSupplier),
  remove: effectOn((name) => removeSupplierEntry(name)),
  called: (supplier) => supplier?.name ?? 'this supplier',
};

/** Those who sell things: when they are there, and what they ask for. */
export const yardSupplierRoutes = (screens: Screens): Hono => sectionRoutes(screens, section, suppliers);
