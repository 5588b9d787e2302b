import type { Context } from 'hono';
import { Hono } from 'hono';
import { KitForm } from '../../views/yard/kit-edit-form.tsx';
import { KITS, KitsPage } from '../../views/yard/kits-page.tsx';
import type { UseCaseContext } from '../usecases/core/context.ts';
import type { FormState } from '../usecases/plan/save-edit.ts';
import { addOneKit, editKit } from '../usecases/yard/edit-kit.ts';
import { removeEntry } from '../usecases/yard/remove-entry.ts';
import { showYardKits } from '../usecases/yard/show-yard-kits.ts';
import { missing } from './failures.tsx';
import { doneNotice } from './notice.ts';
import { page } from './page.tsx';
import { formStatus, removal, type SaveForm, saveForm } from './save-routes.tsx';
import type { Screens } from './screens.ts';

const frame = (title: string, yardName: string) => ({ title, at: 'yard', yardName }) as const;
const idOf = (c: Context) => c.req.param('kit') ?? '';
const back = () => KITS;

/** What it is called, for the page that says it has to stay. */
const nameOf = async (c: Context, context: UseCaseContext): Promise<string> =>
  (await showYardKits(context)).kits.find(({ id }) => id === idOf(c))?.name ?? 'this kit';

const formPage = async (c: Context, context: UseCaseContext, state: FormState, id: string | null) => {
  const model = await showYardKits(context);
  const kit = model.kits.find((one) => one.id === id) ?? null;
  if (id !== null && !kit) return missing(c);
  const content = <KitForm model={model} kit={kit} state={state} />;
  return page(c, frame(kit?.name ?? 'Add a kit', model.yardName), content, formStatus(state));
};

const adding: SaveForm<string> = {
  path: `${KITS}/new`,
  edit: (_c, typed) => addOneKit(typed),
  show: (c, context, state) => formPage(c, context, state, null),
  after: back,
};

const editing: SaveForm<string> = {
  path: `${KITS}/:kit`,
  edit: (c, typed) => editKit(idOf(c), typed),
  show: (c, context, state) => formPage(c, context, state, idOf(c)),
  after: back,
};

/** What is sold as one: pieces, pins and the minutes to pack them. */
export const yardKitRoutes = (screens: Screens): Hono => {
  const routes = new Hono();
  routes.get(KITS, async (c) => {
    const now = screens.context();
    const model = await showYardKits(now);
    const content = <KitsPage model={model} notice={await doneNotice(c, now)} />;
    return page(c, frame('Kits', model.yardName), content);
  });
  routes.route('/', saveForm(screens, adding));
  routes.route('/', saveForm(screens, editing));
  const path = `${KITS}/:kit/remove`;
  routes.route('/', removal(screens, { path, edit: (c) => removeEntry('kit', idOf(c)), name: nameOf, back }));
  return routes;
};
