import type { Context } from 'hono';
import { Hono } from 'hono';
import { CASTINGS } from '../../views/yard/castings-page.tsx';
import { MixForm } from '../../views/yard/mix-form.tsx';
import { MixStrengthPage } from '../../views/yard/mix-strength-page.tsx';
import { MIXES, MixesPage } from '../../views/yard/mixes-page.tsx';
import type { UseCaseContext } from '../usecases/core/context.ts';
import type { FormState } from '../usecases/plan/save-edit.ts';
import { addOneMix, editMix } from '../usecases/yard/edit-mix.ts';
import { removeEntry } from '../usecases/yard/remove-entry.ts';
import { isCement, showMixStrength } from '../usecases/yard/show-mix-strength.ts';
import { showYardMixes } from '../usecases/yard/show-yard-mixes.ts';
import { missing } from './failures.tsx';
import { doneNotice } from './notice.ts';
import { page } from './page.tsx';
import { formStatus, removal, type SaveForm, saveForm } from './save-routes.tsx';
import type { Screens } from './screens.ts';
import { wayBack } from './way-back.ts';

const frame = (title: string, yardName: string) => ({ title, at: 'yard', yardName }) as const;
const idOf = (c: Context) => c.req.param('mix') ?? '';
const back = () => MIXES;

/** What it is called, for the page that says it has to stay. */
const nameOf = async (c: Context, context: UseCaseContext): Promise<string> =>
  (await showYardMixes(context)).mixes.find(({ id }) => id === idOf(c))?.name ?? 'this mix';

const formPage = async (c: Context, context: UseCaseContext, state: FormState, id: string | null) => {
  const model = await showYardMixes(context);
  const mix = model.mixes.find((one) => one.id === id) ?? null;
  if (id !== null && !mix) return missing(c);
  const from = state.typed ? state.typed.from : c.req.query('from');
  const preset = mix ? null : (model.presets.find(({ key }) => key === from) ?? null);
  const content = <MixForm model={model} mix={mix} preset={preset} state={state} back={wayBack(c, CASTINGS)} />;
  return page(c, frame(mix?.name ?? 'Add a mix', model.yardName), content, formStatus(state));
};

const adding: SaveForm<string> = {
  path: `${MIXES}/new`,
  edit: (_c, typed) => addOneMix(typed),
  show: (c, context, state) => formPage(c, context, state, null),
  after: (c) => wayBack(c, CASTINGS) ?? MIXES,
};

const editing: SaveForm<string> = {
  path: `${MIXES}/:mix`,
  edit: (c, typed) => editMix(idOf(c), typed),
  show: (c, context, state) => formPage(c, context, state, idOf(c)),
  after: back,
};

/** How strong a piece is by then; a cement that nobody knows is asked for again. */
const strengthPage = async (c: Context, context: UseCaseContext) => {
  const cement = c.req.query('cement');
  const model = await showMixStrength(context, idOf(c), isCement(cement) ? cement : null);
  if (!model) return missing(c);
  return page(c, frame(`How strong ${model.mix.name} is`, model.yardName), <MixStrengthPage model={model} />);
};

/** What is mixed: from one bag on, and how it hardens. */
export const yardMixRoutes = (screens: Screens): Hono => {
  const routes = new Hono();
  routes.get(MIXES, async (c) => {
    const now = screens.context();
    const model = await showYardMixes(now);
    const content = <MixesPage model={model} notice={await doneNotice(c, now)} />;
    return page(c, frame('Mixes', model.yardName), content);
  });
  routes.get(`${MIXES}/:mix/strength`, (c) => strengthPage(c, screens.context()));
  routes.route('/', saveForm(screens, adding));
  routes.route('/', saveForm(screens, editing));
  const path = `${MIXES}/:mix/remove`;
  routes.route('/', removal(screens, { path, edit: (c) => removeEntry('mix', idOf(c)), name: nameOf, back }));
  return routes;
};
