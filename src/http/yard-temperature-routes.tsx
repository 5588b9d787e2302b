import type { Context } from 'hono';
import { Hono } from 'hono';
import { LineForm, TEMPERATURES, TemperaturesPage } from '../../views/yard/temperatures-page.tsx';
import type { UseCaseContext } from '../usecases/core/context.ts';
import type { FormState } from '../usecases/plan/save-edit.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { addLine, editLine, editMonths, removeLine } from '../usecases/yard/edit-temperatures.ts';
import { showTemperatures, type TemperaturesModel } from '../usecases/yard/show-temperatures.ts';
import { missing } from './failures.tsx';
import { doneNotice } from './notice.ts';
import { page } from './page.tsx';
import { formStatus, removal, type SaveForm, saveForm } from './save-routes.tsx';
import type { Screens } from './screens.ts';

const frame = (title: string, { yardName }: TemperaturesModel) => ({ title, at: 'yard', yardName }) as const;
const idOf = (c: Context) => wholeTyped(c.req.param('id')) ?? -1;
const back = () => TEMPERATURES;

const months: SaveForm<null> = {
  path: TEMPERATURES,
  edit: (_c, typed) => editMonths(typed),
  after: back,
  show: async (c, context, state) => {
    const model = await showTemperatures(context);
    const content = <TemperaturesPage model={model} state={state} notice={await doneNotice(c, context)} />;
    return page(c, frame('Temperatures by month', model), content, formStatus(state));
  },
};

const linePage = async (c: Context, context: UseCaseContext, state: FormState, id: number | null) => {
  const model = await showTemperatures(context);
  const line = model.lines.find((one) => one.id === id) ?? null;
  if (id !== null && !line) return missing(c);
  return page(
    c,
    frame('Days of another temperature', model),
    <LineForm model={model} state={state} line={line} />,
    formStatus(state),
  );
};

const adding: SaveForm<string> = {
  path: `${TEMPERATURES}/new`,
  edit: (_c, typed) => addLine(typed),
  show: (c, context, state) => linePage(c, context, state, null),
  after: back,
};

const editing: SaveForm<string> = {
  path: `${TEMPERATURES}/:id`,
  edit: (c, typed) => editLine(idOf(c), typed),
  show: (c, context, state) => linePage(c, context, state, idOf(c)),
  after: back,
};

/** What temperatures are expected: month by month, and of single weeks. */
export const yardTemperatureRoutes = (screens: Screens): Hono => {
  const routes = new Hono();
  routes.route('/', saveForm(screens, months));
  routes.route('/', saveForm(screens, adding));
  routes.route('/', saveForm(screens, editing));
  const path = `${TEMPERATURES}/:id/remove`;
  const name = () => 'this temperature';
  routes.route('/', removal(screens, { path, edit: (c) => removeLine(idOf(c)), name, back }));
  return routes;
};
