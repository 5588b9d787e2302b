import type { Context } from 'hono';
import { Hono } from 'hono';
import { CastingForm, MIX_FIRST } from '../../views/yard/casting-form.tsx';
import { CASTINGS, CastingsPage } from '../../views/yard/castings-page.tsx';
import type { UseCaseContext } from '../usecases/core/context.ts';
import type { FormState } from '../usecases/plan/save-edit.ts';
import { addCastings, editCasting } from '../usecases/yard/edit-casting.ts';
import { removeEntry } from '../usecases/yard/remove-entry.ts';
import { showYardCastings } from '../usecases/yard/show-yard-castings.ts';
import { missing } from './failures.tsx';
import { readForm } from './form.ts';
import { doneNotice } from './notice.ts';
import { page } from './page.tsx';
import { formStatus, removal, type SaveForm, saveForm } from './save-routes.tsx';
import type { Screens } from './screens.ts';
import { typedInAddress, withWayBack } from './way-back.ts';

const frame = (title: string, yardName: string) => ({ title, at: 'yard', yardName }) as const;
const idOf = (c: Context) => c.req.param('casting') ?? '';
const back = () => CASTINGS;

/** What it is called, for the page that says it has to stay. */
const nameOf = async (c: Context, context: UseCaseContext): Promise<string> =>
  (await showYardCastings(context)).castings.find(({ id }) => id === idOf(c))?.name ?? 'this piece';

const formPage = async (c: Context, context: UseCaseContext, state: FormState, id: string | null) => {
  const model = await showYardCastings(context);
  const casting = model.castings.find((one) => one.id === id) ?? null;
  if (id !== null && !casting) return missing(c);
  // Come back to from a new mix, it is filled in as it was left.
  const filled = state.typed || id !== null ? state : { ...state, typed: typedInAddress(c) };
  const { pathname, search } = new URL(c.req.url);
  const notice = await doneNotice(c, context);
  const content = (
    <CastingForm model={model} entry={casting} state={filled} notice={notice} address={pathname + search} />
  );
  return page(c, frame(casting?.name ?? 'Add what you cast', model.yardName), content, formStatus(state));
};

const adding: SaveForm<string> = {
  path: `${CASTINGS}/new`,
  edit: (_c, typed) => addCastings(typed),
  show: (c, context, state) => formPage(c, context, state, null),
  after: back,
};

const editing: SaveForm<string> = {
  path: `${CASTINGS}/:casting`,
  edit: (c, typed) => editCasting(idOf(c), typed),
  show: (c, context, state) => formPage(c, context, state, idOf(c)),
  after: back,
};

/** What is cast: panels by length, with size, weight and the work on each. */
export const yardCastingRoutes = (screens: Screens): Hono => {
  const routes = new Hono();
  routes.get(CASTINGS, async (c) => {
    const now = screens.context();
    const model = await showYardCastings(now);
    const content = <CastingsPage model={model} notice={await doneNotice(c, now)} />;
    return page(c, frame('What you cast', model.yardName), content);
  });
  routes.post(MIX_FIRST, async (c) =>
    c.redirect(withWayBack('/yard/mixes/new', `${CASTINGS}/new`, await readForm(c)), 303),
  );
  routes.route('/', saveForm(screens, adding));
  routes.route('/', saveForm(screens, editing));
  const path = `${CASTINGS}/:casting/remove`;
  routes.route('/', removal(screens, { path, edit: (c) => removeEntry('casting', idOf(c)), name: nameOf, back }));
  return routes;
};
