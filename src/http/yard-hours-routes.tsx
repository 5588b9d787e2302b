import type { Context } from 'hono';
import { Hono } from 'hono';
import { DayForm, OffForm, RepeatingForm, RuleDates } from '../../views/yard/hours-forms.tsx';
import { HOURS, HOURS_DAY, HOURS_OFF, HoursPage } from '../../views/yard/hours-page.tsx';
import type { UseCaseContext } from '../usecases/core/context.ts';
import type { FormState } from '../usecases/plan/save-edit.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import {
  addDay,
  addDaysOff,
  addHours,
  editDay,
  editHours,
  removeDay,
  removeDaysOff,
  removeHours,
} from '../usecases/yard/edit-hours.ts';
import { datesOfRule, showYardHours, type YardHoursModel } from '../usecases/yard/show-yard-hours.ts';
import { missing } from './failures.tsx';
import { doneNotice } from './notice.ts';
import { page } from './page.tsx';
import { formStatus, removal, type SaveForm, saveForm } from './save-routes.tsx';
import type { Screens } from './screens.ts';

const LONGEST_RULE = 300;

const frame = (title: string, { yardName }: YardHoursModel) => ({ title, at: 'yard', yardName }) as const;
const idOf = (c: Context) => wholeTyped(c.req.param('id')) ?? -1;
const toHours = () => HOURS;

/** What the rule in the form comes to; null while there is none. */
const foundOf = (state: FormState, model: YardHoursModel, id: number | null) => {
  const stored = model.work.find((one) => one.id === id);
  const rule = state.typed ? (state.typed.rule ?? '') : stored && !stored.rhythm ? stored.rule : '';
  const from = state.typed?.from ?? stored?.from ?? '';
  return rule === '' ? null : datesOfRule(rule, from, model);
};

const repeating = async (c: Context, context: UseCaseContext, state: FormState, id: number | null) => {
  const model = await showYardHours(context);
  const hours = model.work.find((one) => one.id === id) ?? null;
  if (id !== null && !hours) return missing(c);
  const form = { state, today: model.today, weekStart: model.weekStart, hours, found: foundOf(state, model, id) };
  const title = hours ? 'Change hours' : 'Add hours';
  return page(c, frame(title, model), <RepeatingForm {...form} />, formStatus(state));
};

const single = async (c: Context, context: UseCaseContext, state: FormState, id: number | null) => {
  const model = await showYardHours(context);
  const hours = model.extra.find((one) => one.id === id) ?? null;
  if (id !== null && !hours) return missing(c);
  const title = hours ? 'Change the hours of a day' : 'Add a day';
  return page(c, frame(title, model), <DayForm state={state} today={model.today} hours={hours} />, formStatus(state));
};

const formAt =
  <T,>(form: SaveForm<T>) =>
  (screens: Screens): Hono =>
    saveForm(screens, form);

const FORMS = [
  formAt({
    path: `${HOURS}/new`,
    edit: (_c, typed) => addHours(typed),
    show: (c, context, state) => repeating(c, context, state, null),
    after: toHours,
  }),
  formAt({
    path: `${HOURS_DAY}/new`,
    edit: (_c, typed) => addDay(typed),
    show: (c, context, state) => single(c, context, state, null),
    after: toHours,
  }),
  formAt({
    path: `${HOURS_OFF}/new`,
    edit: (_c, typed) => addDaysOff(typed),
    after: toHours,
    show: async (c, context, state) => {
      const model = await showYardHours(context);
      return page(c, frame('Add days off', model), <OffForm state={state} today={model.today} />, formStatus(state));
    },
  }),
  formAt({
    path: `${HOURS_DAY}/:id`,
    edit: (c, typed) => editDay(idOf(c), typed),
    show: (c, context, state) => single(c, context, state, idOf(c)),
    after: toHours,
  }),
  formAt({
    path: `${HOURS}/:id`,
    edit: (c, typed) => editHours(idOf(c), typed),
    show: (c, context, state) => repeating(c, context, state, idOf(c)),
    after: toHours,
  }),
];

/** When the yard works: hours that repeat, single days, days off. */
export const yardHoursRoutes = (screens: Screens): Hono => {
  const routes = new Hono();
  routes.get(HOURS, async (c) => {
    const now = screens.context();
    const model = await showYardHours(now);
    return page(c, frame('Hours worked', model), <HoursPage model={model} notice={await doneNotice(c, now)} />);
  });
  routes.get(`${HOURS}/dates`, async (c) => {
    const model = await showYardHours(screens.context());
    const rule = (c.req.query('rule') ?? '').slice(0, LONGEST_RULE).trim();
    const found = rule === '' ? null : datesOfRule(rule, c.req.query('from') ?? '', model);
    return page(c, { title: 'Dates of a rule' }, <RuleDates found={found} today={model.today} />);
  });
  for (const form of FORMS) routes.route('/', form(screens));
  const shared = { name: () => 'these hours', back: toHours };
  routes.route('/', removal(screens, { ...shared, path: `${HOURS}/:id/remove`, edit: (c) => removeHours(idOf(c)) }));
  routes.route('/', removal(screens, { ...shared, path: `${HOURS_DAY}/:id/remove`, edit: (c) => removeDay(idOf(c)) }));
  const off = (c: Context) => removeDaysOff(c.req.param('from') ?? '', c.req.param('to') ?? '');
  routes.route(
    '/',
    removal(screens, { ...shared, name: () => 'these days off', path: `${HOURS_OFF}/:from/:to/remove`, edit: off }),
  );
  return routes;
};
