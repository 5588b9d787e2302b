import type { Context, Hono } from 'hono';
import { LineForm, TEMPERATURES, TemperaturesPage } from '../../views/yard/temperatures-page.tsx';
import { type FormFields, wholeTyped } from '../usecases/typed/form-fields.ts';
import { addLine, editLine, editMonths, removeLine } from '../usecases/yard/edit-temperatures.ts';
import { monthsFilledIn, showTemperatures, type TemperaturesModel } from '../usecases/yard/show-temperatures.ts';
import { errorsByField } from './form.ts';
import { effectFirst, type FormRoute, formPage } from './form-route.tsx';
import { doneNotice } from './notice.ts';
import type { Screens } from './screens.ts';
import { type Entries, effectOn, sectionRoutes } from './section-routes.tsx';

const FRAME = { title: 'Temperatures by month', at: 'yard' } as const;

/** The coldest and the warmest month, where the address has them: the twelve fields are filled in by them. */
const twoAsked = (c: Context): FormFields | null => {
  const [coldest, warmest] = [c.req.query('coldest'), c.req.query('warmest')];
  return coldest === undefined || warmest === undefined ? null : { coldest, warmest };
};

/** The page of the section is a form itself, with the lines below it. */
const months: FormRoute<null> = {
  path: TEMPERATURES,
  save: effectFirst(editMonths),
  next: () => TEMPERATURES,
  show: async (c, context, state) => {
    const model = await showTemperatures(context);
    const two = twoAsked(c);
    if (two && state.typed === null) {
      const filled = await monthsFilledIn(context, two);
      const filledState = filled.ok
        ? { typed: filled.value, errors: {}, effect: null }
        : { typed: null, errors: errorsByField(filled.faults), effect: null };
      const page = <TemperaturesPage model={model} state={filledState} notice={null} two={two} />;
      return { frame: { ...FRAME, yardName: model.yardName }, content: page, status: filled.ok ? 200 : 422 };
    }
    return {
      frame: { ...FRAME, yardName: model.yardName },
      content: <TemperaturesPage model={model} state={state} notice={await doneNotice(c, context)} />,
    };
  },
};

const numbered = (id: string): number => wholeTyped(id) ?? -1;

const lines: Entries<TemperaturesModel, TemperaturesModel['lines'][number]> = {
  path: TEMPERATURES,
  of: (model) => model.lines,
  form: ({ model, entry, state }) => ({
    title: 'Days of another temperature',
    content: <LineForm model={model} state={state} line={entry} />,
  }),
  add: effectFirst(addLine),
  edit: effectOn((id, fields) => editLine(numbered(id), fields)),
  remove: effectOn((id) => removeLine(numbered(id))),
  called: () => 'this temperature',
};

/** What temperatures are expected: month by month, and of single weeks. */
export const yardTemperatureRoutes = (screens: Screens): Hono =>
  formPage(screens, months).route('/', sectionRoutes(screens, { path: TEMPERATURES, load: showTemperatures }, lines));
