import { type Context, Hono } from 'hono';
import { DayForm, OffForm, RepeatingForm, RuleDates } from '../../views/yard/hours-forms.tsx';
import { HOURS, HOURS_DAY, HOURS_OFF, HoursPage } from '../../views/yard/hours-page.tsx';
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
import { effectFirst, formPage } from './form-route.tsx';
import { page } from './page.tsx';
import type { Screens } from './screens.ts';
import { type Entries, effectOn, entryRoutes, removeRoutes, type Section, sectionRoutes } from './section-routes.tsx';

const LONGEST_RULE = 300;

const section: Section<YardHoursModel> = {
  path: HOURS,
  load: showYardHours,
  list: (model, notice) => ({ title: 'Hours worked', content: <HoursPage model={model} notice={notice} /> }),
};

const numbered = (id: string): number => wholeTyped(id) ?? -1;

type Repeating = YardHoursModel['work'][number];

/** What the rule in the form comes to; null while there is none. */
const foundOf = ({ typed }: FormState, model: YardHoursModel, stored: Repeating | null) => {
  const rule = typed ? (typed.rule ?? '') : stored && !stored.rhythm ? stored.rule : '';
  const from = typed?.from ?? stored?.from ?? '';
  return rule === '' ? null : datesOfRule(rule, from, model);
};

const repeating: Entries<YardHoursModel, Repeating> = {
  path: HOURS,
  of: ({ work }) => work,
  form: ({ model, entry, state }) => {
    const { today, weekStart } = model;
    const form = { state, today, weekStart, hours: entry, found: foundOf(state, model, entry) };
    return { title: entry ? 'Change hours' : 'Add hours', content: <RepeatingForm {...form} /> };
  },
  add: effectFirst(addHours),
  edit: effectOn((id, fields) => editHours(numbered(id), fields)),
  remove: effectOn((id) => removeHours(numbered(id))),
  called: () => 'these hours',
};

const singleDays: Entries<YardHoursModel, YardHoursModel['extra'][number]> = {
  path: HOURS_DAY,
  of: ({ extra }) => extra,
  form: ({ model, entry, state }) => ({
    title: entry ? 'Change the hours of a day' : 'Add a day',
    content: <DayForm state={state} today={model.today} hours={entry} />,
  }),
  add: effectFirst(addDay),
  edit: effectOn((id, fields) => editDay(numbered(id), fields)),
  remove: effectOn((id) => removeDay(numbered(id))),
  called: () => 'these hours',
};

/** Days off are added and removed, from one to another; there is nothing else to change about them. */
const daysOff = (screens: Screens): Hono => {
  const adding = formPage(screens, {
    path: `${HOURS_OFF}/new`,
    save: effectFirst(addDaysOff),
    next: () => HOURS,
    show: async (_c, context, state) => {
      const { yardName, today } = await showYardHours(context);
      return {
        frame: { title: 'Add days off', at: 'yard', yardName },
        content: <OffForm state={state} today={today} />,
      };
    },
  });
  const removing = removeRoutes(screens, {
    path: `${HOURS_OFF}/:from/:to/remove`,
    save: effectFirst((_fields, c) => removeDaysOff(c.req.param('from') ?? '', c.req.param('to') ?? '')),
    called: async () => 'these days off',
    back: HOURS,
  });
  return adding.route('/', removing);
};

/** The dates of a rule while it is typed. */
const ruleDates = async (c: Context, { context }: Screens) => {
  const model = await showYardHours(context());
  const rule = (c.req.query('rule') ?? '').slice(0, LONGEST_RULE).trim();
  const found = rule === '' ? null : datesOfRule(rule, c.req.query('from') ?? '', model);
  return page(c, { title: 'Dates of a rule' }, <RuleDates found={found} today={model.today} />);
};

/** When the yard works: hours that repeat, single days, days off. */
export const yardHoursRoutes = (screens: Screens): Hono =>
  new Hono()
    .get(`${HOURS}/dates`, (c) => ruleDates(c, screens))
    .route('/', sectionRoutes(screens, section, repeating))
    .route('/', entryRoutes(screens, section, singleDays))
    .route('/', daysOff(screens));
