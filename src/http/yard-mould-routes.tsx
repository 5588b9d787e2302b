import type { Context } from 'hono';
import { Hono } from 'hono';
import { NewMouldsPage, YardMouldPage } from '../../views/yard/mould-pages.tsx';
import { YARD_MOULDS, YardMouldsPage } from '../../views/yard/moulds-page.tsx';
import { addMoulds, editMould } from '../usecases/yard/edit-mould.ts';
import { removeEntry } from '../usecases/yard/remove-entry.ts';
import { showYardMoulds } from '../usecases/yard/show-yard-moulds.ts';
import { missing } from './failures.tsx';
import { doneNotice } from './notice.ts';
import { page } from './page.tsx';
import { formStatus, removal, type SaveForm, saveForm } from './save-routes.tsx';
import type { Screens } from './screens.ts';

const frame = (title: string, yardName: string) => ({ title, at: 'yard', yardName }) as const;
const mouldOf = (c: Context) => c.req.param('mould') ?? '';
const toList = () => YARD_MOULDS;

const adding: SaveForm<string[]> = {
  path: `${YARD_MOULDS}/new`,
  edit: (_c, typed) => addMoulds(typed),
  after: toList,
  show: async (c, context, state) => {
    const model = await showYardMoulds(context);
    return page(
      c,
      frame('Add moulds', model.yardName),
      <NewMouldsPage model={model} state={state} />,
      formStatus(state),
    );
  },
};

const editing: SaveForm<string> = {
  path: `${YARD_MOULDS}/:mould`,
  edit: (c, typed) => editMould(mouldOf(c), typed),
  after: toList,
  show: async (c, context, state) => {
    const model = await showYardMoulds(context);
    const mould = model.moulds.find(({ id }) => id === mouldOf(c));
    if (!mould) return missing(c);
    const content = <YardMouldPage model={model} mould={mould} state={state} />;
    return page(c, frame(mould.id, model.yardName), content, formStatus(state));
  },
};

/** The moulds as things of the yard: added several at once, changed, removed. */
export const yardMouldRoutes = (screens: Screens): Hono => {
  const routes = new Hono();
  routes.get(YARD_MOULDS, async (c) => {
    const now = screens.context();
    const model = await showYardMoulds(now);
    const content = <YardMouldsPage model={model} notice={await doneNotice(c, now)} />;
    return page(c, frame('Moulds of the yard', model.yardName), content);
  });
  routes.route('/', saveForm(screens, adding));
  routes.route('/', saveForm(screens, editing));
  const instead = 'Nothing was changed. Mark it scrapped instead: then it takes no pour and stays on record.';
  const path = `${YARD_MOULDS}/:mould/remove`;
  routes.route(
    '/',
    removal(screens, { path, edit: (c) => removeEntry('mould', mouldOf(c)), name: mouldOf, back: toList, instead }),
  );
  return routes;
};
