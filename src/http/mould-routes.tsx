import type { Context } from 'hono';
import { Hono } from 'hono';
import type { RefusedMark } from '../../views/moulds/mould-row.tsx';
import { MouldsPage, MouldsPart } from '../../views/moulds/moulds-page.tsx';
import { NextMould } from '../../views/moulds/next-mould.tsx';
import { searchQuery } from '../../views/parts/find-form.tsx';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { WHICH_MOULDS } from '../usecases/moulds/find-moulds.ts';
import { MOULD_MARKS, markMould } from '../usecases/moulds/mark-mould.ts';
import { nextMouldsToBuild } from '../usecases/moulds/next-moulds-to-build.ts';
import { showMoulds } from '../usecases/moulds/show-moulds.ts';
import { dateReading } from '../usecases/plan/date-reading.ts';
import { markTyped } from '../usecases/typed/mould-mark-form.ts';
import { errorsByField, readForm } from './form.ts';
import { doneNotice } from './notice.ts';
import { page, seeDone, wantsPart } from './page.tsx';
import type { Screens } from './screens.ts';
import { searched } from './searched.ts';

const mouldsPage = async (c: Context, context: UseCaseContext, refused: RefusedMark | null) => {
  const model = await showMoulds(context, searched(c, WHICH_MOULDS));
  if (wantsPart(c)) return page(c, { title: 'Moulds' }, <MouldsPart model={model} />);
  const next = c.req.query('next') === undefined ? null : await nextMouldsToBuild(context);
  const content = <MouldsPage model={model} notice={await doneNotice(c, context)} refused={refused} next={next} />;
  const frame = { title: 'Moulds', at: 'moulds', yardName: model.yardName, place: 'yard' } as const;
  return page(c, frame, content, { status: refused ? 422 : 200 });
};

export const mouldRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.get('/moulds/next', async (c) =>
    page(c, { title: 'Which mould to build next' }, <NextMould next={await nextMouldsToBuild(context())} />),
  );
  routes.get('/moulds', (c) => mouldsPage(c, context(), null));
  routes.post('/moulds/:id/:mark', async (c) => {
    const id = c.req.param('id');
    const mark = MOULD_MARKS.find((one) => one === c.req.param('mark'));
    if (!mark) return c.notFound();
    const typed = await readForm(c);
    const details = markTyped(typed, await dateReading(context()));
    const outcome = details.ok ? await markMould(context(), id, mark, details.value) : details;
    if (outcome.ok) return seeDone(c, `/moulds${searchQuery(searched(c, WHICH_MOULDS))}`, outcome.value.change, typed);
    return mouldsPage(c, context(), { mould: id, errors: errorsByField(outcome.faults), typed });
  });
  return routes;
};
