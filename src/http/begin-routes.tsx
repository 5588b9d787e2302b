import type { Context } from 'hono';
import { Hono } from 'hono';
import { BeginPage } from '../../views/begin/begin-page.tsx';
import { BEGIN, EMPTY_YARD, FIT, FOUR } from '../../views/begin/begin-text.ts';
import { FitPage } from '../../views/begin/fit-page.tsx';
import { FourPage } from '../../views/begin/four-page.tsx';
import { beginEmpty, beginWithAnswers } from '../usecases/begin/begin-own-yard.ts';
import { fitTimes, showFit } from '../usecases/begin/fit-times.ts';
import { showBegin } from '../usecases/begin/show-begin.ts';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { lengthRows } from '../usecases/typed/begin-form.ts';
import type { FormFields } from '../usecases/typed/form-fields.ts';
import { errorsByField, readForm } from './form.ts';
import { doneNotice } from './notice.ts';
import { page, seeDone } from './page.tsx';
import type { Screens } from './screens.ts';

type Errors = Record<string, string>;

const statusOf = (errors: Errors) => ({ status: Object.keys(errors).length > 0 ? 422 : 200 }) as const;

const beginPage = async (c: Context, context: UseCaseContext, typed: FormFields, errors: Errors = {}) => {
  const model = await showBegin(context);
  const content = <BeginPage model={model} errors={errors} typed={typed} />;
  return page(c, { title: 'Begin', at: 'yard', yardName: model.yardName }, content, statusOf(errors));
};

/** What stands in the form to begin with: a cautious rapid mortar, and the Saturday of a small yard. */
const PREFILLED: Readonly<Record<'metric' | 'US', FormFields>> = {
  metric: { coldCelsius: '10 °C', warmCelsius: '20 °C', height: '200 mm', thickness: '35 mm' },
  US: { coldCelsius: '50 °F', warmCelsius: '68 °F', height: '8 in', thickness: '1 3/8 in' },
};
const newlyTyped = (system: 'metric' | 'US'): FormFields => ({
  ...PREFILLED[system],
  ...{ system, coldMinutes: '180', warmMinutes: '90', season: 'cold' },
  ...{ 'days0:SA': 'yes', from0: '08:00', to0: '14:00', people0: '1', people1: '1' },
});

const fourPage = async (c: Context, context: UseCaseContext, typed: FormFields | null, errors: Errors = {}) => {
  const model = await showBegin(context);
  const shown = typed ?? newlyTyped(model.system);
  const content = <FourPage model={model} errors={errors} typed={shown} rows={lengthRows(shown)} />;
  return page(c, { title: 'Four answers', at: 'yard', yardName: model.yardName }, content, statusOf(errors));
};

const fitPage = async (c: Context, context: UseCaseContext, made: string | null, refused: Errors = {}) => {
  const model = await showFit(context, made);
  const errors = model.wrong ? { made: model.wrong } : refused;
  const content = <FitPage model={model} notice={await doneNotice(c, context)} errors={errors} made={made ?? ''} />;
  return page(c, { title: 'A usual session', at: 'yard', yardName: model.yardName }, content, statusOf(errors));
};

export const beginRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.get(BEGIN, (c) => beginPage(c, context(), {}));
  routes.post(EMPTY_YARD, async (c) => {
    const [now, typed] = [context(), await readForm(c)];
    const outcome = await beginEmpty(now, typed);
    if (outcome.ok) return seeDone(c, '/yard', outcome.value.change);
    return beginPage(c, now, typed, errorsByField(outcome.faults));
  });
  routes.get(FOUR, (c) => fourPage(c, context(), null));
  routes.post(FOUR, async (c) => {
    const [now, typed] = [context(), await readForm(c)];
    if (typed.more) return fourPage(c, now, typed);
    const outcome = await beginWithAnswers(now, typed);
    if (outcome.ok) return seeDone(c, FIT, outcome.value.change);
    return fourPage(c, now, typed, errorsByField(outcome.faults));
  });
  routes.get(FIT, (c) => fitPage(c, context(), c.req.query('made')?.trim() ?? null));
  routes.post(FIT, async (c) => {
    const [now, { made = '' }] = [context(), await readForm(c)];
    const outcome = await fitTimes(now, made);
    if (!outcome.ok) return fitPage(c, now, made, errorsByField(outcome.faults));
    const { change, yard } = outcome.value;
    return seeDone(
      c,
      `/?${new URLSearchParams({ what: `casting:${yard.castings[0]?.id ?? ''}`, number: '1' })}`,
      change,
    );
  });
  return routes;
};
