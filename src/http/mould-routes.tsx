import type { Context } from 'hono';
import { Hono } from 'hono';
import { MouldsPage, MouldsPart } from '../../views/moulds/moulds-page.tsx';
import { NextMould } from '../../views/moulds/next-mould.tsx';
import { searchQuery } from '../../views/parts/find-form.tsx';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { WHICH_MOULDS } from '../usecases/moulds/find-moulds.ts';
import { MOULD_MARKS, markMould } from '../usecases/moulds/mark-mould.ts';
import { nextMouldsToBuild } from '../usecases/moulds/next-moulds-to-build.ts';
import { showMoulds } from '../usecases/moulds/show-moulds.ts';
import type { RefusedForm } from '../usecases/plan/save-edit.ts';
import { markTyped } from '../usecases/typed/mould-mark-form.ts';
import { atOnce, withDays } from './form-route.tsx';
import { formsOnPage, type PageForm } from './forms-on-page.tsx';
import { doneNotice } from './notice.ts';
import { page, wantsPart } from './page.tsx';
import type { Screens } from './screens.ts';
import { searched } from './searched.ts';

const mouldsPage = async (c: Context, context: UseCaseContext, refused: RefusedForm | null) => {
  const model = await showMoulds(context, searched(c, WHICH_MOULDS));
  if (wantsPart(c)) return { frame: { title: 'Moulds' }, content: <MouldsPart model={model} />, status: 200 as const };
  const next = c.req.query('next') === undefined ? null : await nextMouldsToBuild(context);
  const content = <MouldsPage model={model} notice={await doneNotice(c, context)} refused={refused} next={next} />;
  return { frame: { title: 'Moulds', at: 'moulds', yardName: model.yardName, place: 'yard' } as const, content };
};

const mouldOf = (c: Context): string => c.req.param('id') ?? '';

const FORMS = Object.fromEntries(
  MOULD_MARKS.map((mark): [string, PageForm] => {
    const save = atOnce(withDays(markTyped), (context, { was, ...details }, c) =>
      markMould(context, mouldOf(c), mark, details, was),
    );
    return [mark, { save, form: (_fields, c) => mouldOf(c) }];
  }),
);

const listAsSearched = (c: Context): string => `/moulds${searchQuery(searched(c, WHICH_MOULDS))}`;

export const mouldRoutes = (screens: Screens): Hono =>
  new Hono()
    .get('/moulds/next', async (c) => {
      const next = await nextMouldsToBuild(screens.context());
      return page(c, { title: 'Which mould to build next' }, <NextMould next={next} />);
    })
    .route(
      '/',
      formsOnPage(screens, { path: '/moulds', under: '/moulds/:id', show: mouldsPage, next: listAsSearched }, FORMS),
    );
