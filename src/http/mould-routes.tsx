import type { Context } from 'hono';
import { Hono } from 'hono';
import { LABELS, LabelsPage } from '../../views/moulds/labels-page.tsx';
import { mouldPagePath } from '../../views/moulds/mould-facts.ts';
import { BLOCKS, MouldPage } from '../../views/moulds/mould-page.tsx';
import { PART } from '../../views/moulds/mould-parts.tsx';
import { mouldsQuery } from '../../views/moulds/moulds-in-parts.ts';
import { MouldsPage, MouldsPart } from '../../views/moulds/moulds-page.tsx';
import { NextMould } from '../../views/moulds/next-mould.tsx';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { WHICH_MOULDS } from '../usecases/moulds/find-moulds.ts';
import { MOULD_MARKS, markMould } from '../usecases/moulds/mark-mould.ts';
import { nextMouldsToBuild } from '../usecases/moulds/next-moulds-to-build.ts';
import { sayHowPartIs } from '../usecases/moulds/say-of-part.ts';
import { showMould } from '../usecases/moulds/show-mould.ts';
import { showMoulds } from '../usecases/moulds/show-moulds.ts';
import { whatItBlocks } from '../usecases/moulds/what-it-blocks.ts';
import type { RefusedForm } from '../usecases/plan/save-edit.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { markTyped } from '../usecases/typed/mould-mark-form.ts';
import { partTyped } from '../usecases/typed/mould-part-form.ts';
import { missing } from './failures.tsx';
import { atOnce, withDays } from './form-route.tsx';
import { formsOnPage, type PageForm } from './forms-on-page.tsx';
import { doneNotice } from './notice.ts';
import { page, wantsPart } from './page.tsx';
import type { Screens } from './screens.ts';
import { searched } from './searched.ts';

/** The page of one mould; null where there is none of that name. */
const mouldPage = async (c: Context, context: UseCaseContext, id: string, refused: RefusedForm | null) => {
  const model = await showMould(context, id);
  if (!model) return null;
  const blocked = c.req.query(BLOCKS) === undefined ? null : await whatItBlocks(context, id);
  const notice = await doneNotice(c, context);
  const content = <MouldPage model={model} notice={notice} refused={refused} blocked={blocked} />;
  return { frame: { title: id, at: 'moulds', yardName: model.yardName, place: 'yard' } as const, content };
};

/** A form that was sent from the page of a mould is answered there. */
const isFromMould = (c: Context): boolean => c.req.query('from') === 'mould';

/** On which page of a long list. */
const fromOf = (c: Context): number => wholeTyped(c.req.query('from')) ?? 0;

const mouldsPage = async (c: Context, context: UseCaseContext, refused: RefusedForm | null) => {
  if (refused && isFromMould(c)) return mouldPage(c, context, mouldOf(c), refused);
  const model = await showMoulds(context, searched(c, WHICH_MOULDS));
  if (wantsPart(c))
    return { frame: { title: 'Moulds' }, content: <MouldsPart model={model} from={fromOf(c)} />, status: 200 as const };
  const next = c.req.query('next') === undefined ? null : await nextMouldsToBuild(context);
  const shown = { model, refused, next, from: fromOf(c) };
  const content = <MouldsPage {...shown} notice={await doneNotice(c, context)} />;
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

/** What is said of a part of the set, on the mould's own page. */
const PART_FORM: PageForm = {
  save: atOnce(withDays(partTyped), (context, { part, condition, note, repairedOn, cameOut, was }, c) =>
    sayHowPartIs(context, mouldOf(c), { part, condition, note }, { repairedOn, cameOut }, was),
  ),
  form: () => PART,
};

const backFrom = (c: Context): string =>
  isFromMould(c) ? mouldPagePath(mouldOf(c)) : `/moulds${mouldsQuery(searched(c, WHICH_MOULDS), fromOf(c))}`;

const labelsPage = async (c: Context, { context, addressOf }: Screens) => {
  const model = await showMoulds(context());
  const addressOfMould = (id: string): string => addressOf(c, mouldPagePath(id));
  const frame = { title: 'Labels for the moulds', at: 'moulds', yardName: model.yardName } as const;
  return page(c, frame, <LabelsPage model={model} from={fromOf(c)} addressOf={addressOfMould} />);
};

export const mouldRoutes = (screens: Screens): Hono =>
  new Hono()
    .get('/moulds/next', async (c) => {
      const next = await nextMouldsToBuild(screens.context());
      return page(
        c,
        { title: 'Which mould to build next' },
        <NextMould next={next} longestMm={Math.max(0, ...(next.moulds ?? []).map(({ lengthMm }) => lengthMm ?? 0))} />,
      );
    })
    .get(LABELS, (c) => labelsPage(c, screens))
    .get('/mould/:id', async (c) => {
      const shown = await mouldPage(c, screens.context(), mouldOf(c), null);
      return shown ? page(c, shown.frame, shown.content) : missing(c);
    })
    .route(
      '/',
      formsOnPage(
        screens,
        { path: '/moulds', under: '/moulds/:id', show: mouldsPage, next: backFrom },
        { ...FORMS, [PART]: PART_FORM },
      ),
    );
