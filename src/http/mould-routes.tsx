import type { Context } from 'hono';
import { Hono } from 'hono';
import type { RefusedMark } from '../../views/moulds/mould-row.tsx';
import { MouldsPage, MouldsPart } from '../../views/moulds/moulds-page.tsx';
import { NextMould } from '../../views/moulds/next-mould.tsx';
import { searchQuery } from '../../views/parts/find-form.tsx';
import type { Outcome, UseCaseContext } from '../usecases/core/context.ts';
import { WHICH_MOULDS } from '../usecases/moulds/find-moulds.ts';
import { type MarkDetails, MOULD_MARKS, markMould } from '../usecases/moulds/mark-mould.ts';
import { nextMouldsToBuild } from '../usecases/moulds/next-moulds-to-build.ts';
import { showMoulds } from '../usecases/moulds/show-moulds.ts';
import type { DateReading } from '../usecases/typed/date-typed.ts';
import { dateReading } from '../usecases/typed/measures.ts';
import type { Screens } from './app.ts';
import { cameOutTyped } from './came-out-typed.ts';
import { errorsByField, readForm, type Typed } from './form.ts';
import { doneNotice } from './notice.ts';
import { dateTyped } from './order-form.ts';
import { page, seeDone, wantsPart } from './page.tsx';
import { searched } from './searched.ts';

const mouldsPage = async (c: Context, context: UseCaseContext, refused: RefusedMark | null) => {
  const model = await showMoulds(context, searched(c, WHICH_MOULDS));
  if (wantsPart(c)) return page(c, { title: 'Moulds' }, <MouldsPart model={model} />);
  const next = c.req.query('next') === undefined ? null : await nextMouldsToBuild(context);
  const content = <MouldsPage model={model} notice={await doneNotice(c, context)} refused={refused} next={next} />;
  const frame = { title: 'Moulds', at: 'moulds', yardName: model.yardName, place: 'yard' } as const;
  return page(c, frame, content, { status: refused ? 422 : 200 });
};

const detailsTyped = (typed: Typed, how: DateReading): Outcome<MarkDetails> => {
  const { date, faults } = dateTyped(typed, 'repairedOn', how);
  if (faults.length > 0) return { ok: false, faults };
  return { ok: true, value: { note: typed.note ?? '', repairedOn: date, cameOut: cameOutTyped(typed) } };
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
    const details = detailsTyped(typed, await dateReading(context()));
    const outcome = details.ok ? await markMould(context(), id, mark, details.value) : details;
    if (outcome.ok) return seeDone(c, `/moulds${searchQuery(searched(c, WHICH_MOULDS))}`, outcome.value.change, typed);
    return mouldsPage(c, context(), { mould: id, errors: errorsByField(outcome.faults), typed });
  });
  return routes;
};
