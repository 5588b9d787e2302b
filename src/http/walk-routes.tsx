import type { Context, Hono } from 'hono';
import { WALK, WalkPage, walkFrom } from '../../views/stock/walk-page.tsx';
import { showWalk } from '../usecases/stock/show-walk.ts';
import { walkRound } from '../usecases/stock/walk-round.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { walkTyped } from '../usecases/typed/walk-form.ts';
import { atOnce, formPage, type Show } from './form-route.tsx';
import { doneNotice } from './notice.ts';
import type { Screens } from './screens.ts';

/** How many moulds are on the pages before. */
const fromOf = (c: Context): number => wholeTyped(c.req.query('from')) ?? 0;

const walkPage: Show = async (c, context, state) => {
  const model = await showWalk(context);
  const frame = { title: 'Walk round and count', at: 'buying', yardName: model.yardName, place: 'yard' } as const;
  const shown = { model, state, from: fromOf(c) };
  return { frame, content: <WalkPage {...shown} notice={await doneNotice(c, context)} /> };
};

/** One walk round the yard: all that is counted, on one page. */
export const walkRoutes = (screens: Screens): Hono =>
  formPage(screens, {
    path: WALK,
    show: walkPage,
    save: atOnce(walkTyped, walkRound),
    next: (c) => walkFrom(fromOf(c)),
  });
