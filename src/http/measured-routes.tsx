import type { Hono } from 'hono';
import { MeasuredPage } from '../../views/yard/measured-page.tsx';
import { MEASURED } from '../../views/yard/measured-text.ts';
import { showMeasured } from '../usecases/yard/show-measured.ts';
import { takeMeasured } from '../usecases/yard/take-measured.ts';
import { effectFirst, type FormRoute, formPage } from './form-route.tsx';
import { doneNotice } from './notice.ts';
import type { Screens } from './screens.ts';

const taking: FormRoute<unknown> = {
  path: MEASURED,
  save: effectFirst(takeMeasured),
  next: () => MEASURED,
  show: async (c, context, state) => {
    const model = await showMeasured(context);
    const frame = { title: 'What the work takes', at: 'yard', yardName: model.yardName } as const;
    return { frame, content: <MeasuredPage model={model} state={state} notice={await doneNotice(c, context)} /> };
  },
};

/** What the work really takes, and taking it over into the figures. */
export const measuredRoutes = (screens: Screens): Hono => formPage(screens, taking);
