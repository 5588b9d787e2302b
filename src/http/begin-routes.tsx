import type { Context, Hono } from 'hono';
import { BeginPage } from '../../views/begin/begin-page.tsx';
import { BEGIN, EMPTY_YARD, FIT, FOUR } from '../../views/begin/begin-text.ts';
import { FitPage } from '../../views/begin/fit-page.tsx';
import { FourPage } from '../../views/begin/four-page.tsx';
import { beginEmpty, beginWithAnswers } from '../usecases/begin/begin-own-yard.ts';
import { fitTimes, showFit } from '../usecases/begin/fit-times.ts';
import { type BeginModel, showBegin } from '../usecases/begin/show-begin.ts';
import { done } from '../usecases/core/context.ts';
import { lengthRows } from '../usecases/typed/begin-form.ts';
import type { FormFields } from '../usecases/typed/form-fields.ts';
import { isInUs } from './browser-region.ts';
import { asSent, atOnce, type FormRoute, formPage, formRoute, pageRoute, type Show } from './form-route.tsx';
import { doneNotice } from './notice.ts';
import type { Screens } from './screens.ts';

/** How a new yard measures and writes until it says otherwise: as the browser's region does, or as the yard that is there. */
const writtenBy = (c: Context, { demo, system, english }: BeginModel): FormFields => {
  if (!demo) return { system, english };
  return isInUs(c.req.header('Accept-Language'))
    ? { system: 'US', english: 'US' }
    : { system: 'metric', english: 'British' };
};

const beginPage: Show = async (c, context, { typed, errors }) => {
  const model = await showBegin(context);
  const content = <BeginPage model={model} errors={errors} typed={typed ?? writtenBy(c, model)} />;
  return { frame: { title: 'Begin', at: 'yard', yardName: model.yardName }, content };
};

/** What stands in the form to begin with: a cautious fast-setting mortar, and the Saturday of a small yard. */
const PREFILLED: Readonly<Record<'metric' | 'US', FormFields>> = {
  metric: { coldCelsius: '10 °C', warmCelsius: '20 °C', height: '200 mm', thickness: '35 mm' },
  US: { coldCelsius: '50 °F', warmCelsius: '68 °F', height: '8 in', thickness: '1 3/8 in' },
};
const newlyTyped = (written: FormFields): FormFields => ({
  ...PREFILLED[written.system === 'US' ? 'US' : 'metric'],
  ...written,
  ...{ coldMinutes: '180', warmMinutes: '90', season: 'cold' },
  ...{ 'days0:SA': 'yes', from0: '08:00', to0: '14:00', people0: '1', people1: '1' },
});

const fourPage: Show = async (c, context, { typed, errors }) => {
  const model = await showBegin(context);
  const shown = typed ?? newlyTyped(writtenBy(c, model));
  const content = <FourPage model={model} errors={errors} typed={shown} rows={lengthRows(shown)} />;
  return { frame: { title: 'Four answers', at: 'yard', yardName: model.yardName }, content };
};

const fitPage: Show = async (c, context, { typed, errors }) => {
  const made = typed ? (typed.made ?? '') : (c.req.query('made')?.trim() ?? null);
  const model = await showFit(context, made);
  const wrong = model.wrong ? { made: model.wrong } : errors;
  const content = <FitPage model={model} notice={await doneNotice(c, context)} errors={wrong} made={made ?? ''} />;
  const frame = { title: 'A usual session', at: 'yard', yardName: model.yardName } as const;
  return { frame, content, ...(model.wrong ? { status: 422 as const } : {}) };
};

const empty: FormRoute<unknown> = {
  path: EMPTY_YARD,
  show: beginPage,
  save: atOnce(asSent, beginEmpty),
  next: () => '/yard',
};

const four: FormRoute<unknown> = {
  path: FOUR,
  show: fourPage,
  save: atOnce(asSent, beginWithAnswers),
  next: () => FIT,
  isUnfinished: ({ more }) => Boolean(more),
};

const fit: FormRoute<{ first: string }> = {
  path: FIT,
  show: fitPage,
  save: atOnce(({ made = '' }) => done(made), fitTimes),
  next: (_c, made) => (made ? `/?${new URLSearchParams({ what: `casting:${made.first}`, number: '1' })}` : '/'),
};

export const beginRoutes = (screens: Screens): Hono =>
  pageRoute(screens, BEGIN, beginPage)
    .route('/', formRoute(screens, empty))
    .route('/', formPage(screens, four))
    .route('/', formPage(screens, fit));
