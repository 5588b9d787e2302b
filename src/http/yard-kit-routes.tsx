import type { Hono } from 'hono';
import { KitForm } from '../../views/yard/kit-edit-form.tsx';
import { KITS, KitsPage } from '../../views/yard/kits-page.tsx';
import { addOneKit, editKit } from '../usecases/yard/edit-kit.ts';
import { removeEntry } from '../usecases/yard/remove-entry.ts';
import { showYardKits, type YardKit, type YardKitsModel } from '../usecases/yard/show-yard-kits.ts';
import { effectFirst } from './form-route.tsx';
import type { Screens } from './screens.ts';
import { type Entries, effectOn, type Section, sectionRoutes } from './section-routes.tsx';

const section: Section<YardKitsModel> = {
  path: KITS,
  load: showYardKits,
  list: (model, notice) => ({ title: 'Kits', content: <KitsPage model={model} notice={notice} /> }),
};

const kits: Entries<YardKitsModel, YardKit> = {
  path: KITS,
  of: (model) => model.kits,
  form: ({ model, entry, state }) => ({
    title: entry?.name ?? 'Add a kit',
    content: <KitForm model={model} kit={entry} state={state} />,
  }),
  add: effectFirst(addOneKit),
  edit: effectOn(editKit),
  remove: effectOn((id) => removeEntry('kit', id)),
  called: (kit) => kit?.name ?? 'this kit',
};

/** What is sold as one: pieces, pins and the minutes to pack them. */
export const yardKitRoutes = (screens: Screens): Hono => sectionRoutes(screens, section, kits);
