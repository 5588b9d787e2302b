import type { Hono } from 'hono';
import { NewMouldsPage, YardMouldPage } from '../../views/yard/mould-pages.tsx';
import { YARD_MOULDS, YardMouldsPage } from '../../views/yard/moulds-page.tsx';
import { addMoulds, editMould } from '../usecases/yard/edit-mould.ts';
import { removeEntry } from '../usecases/yard/remove-entry.ts';
import { showYardMoulds, type YardMould, type YardMouldsModel } from '../usecases/yard/show-yard-moulds.ts';
import { effectFirst } from './form-route.tsx';
import type { Screens } from './screens.ts';
import { type Entries, effectOn, type Section, sectionRoutes } from './section-routes.tsx';

const section: Section<YardMouldsModel> = {
  path: YARD_MOULDS,
  load: showYardMoulds,
  list: (model, notice) => ({
    title: 'Moulds of the yard',
    content: <YardMouldsPage model={model} notice={notice} />,
  }),
};

const moulds: Entries<YardMouldsModel, YardMould> = {
  path: YARD_MOULDS,
  of: (model) => model.moulds,
  form: ({ model, entry, state }) =>
    entry
      ? { title: entry.id, content: <YardMouldPage model={model} mould={entry} state={state} /> }
      : { title: 'Add moulds', content: <NewMouldsPage model={model} state={state} /> },
  add: effectFirst(addMoulds),
  edit: effectOn(editMould),
  remove: effectOn((id) => removeEntry('mould', id)),
  called: (_mould, id) => id,
  instead: 'Nothing was changed. Mark it scrapped instead: then it takes no pour and stays on record.',
};

/** The moulds as things of the yard: added several at once, changed, removed. */
export const yardMouldRoutes = (screens: Screens): Hono => sectionRoutes(screens, section, moulds);
