import type { Context } from 'hono';
import { Hono } from 'hono';
import { FirstPage, LiveParts, Standing } from '../../views/first/first-page.tsx';
import { PairList, TwoAtOncePage } from '../../views/first/two-at-once.tsx';
import { dismissNotice } from '../usecases/changes/dismiss-notice.ts';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { askPairs } from '../usecases/first/ask-pairs.ts';
import { showFirst } from '../usecases/first/show-first.ts';
import { showQuestion } from '../usecases/first/show-question.ts';
import { dateReading } from '../usecases/plan/date-reading.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { questionTyped } from '../usecases/typed/order-form.ts';
import { errorsByField, readForm } from './form.ts';
import { doneNotice } from './notice.ts';
import { ownPath, page, wantsPart } from './page.tsx';
import type { Screens } from './screens.ts';

/** The fields of the question are called by the one line they make. */
const asErrors = (faults: Parameters<typeof errorsByField>[0]) => {
  const { what0, quantity0 } = errorsByField(faults);
  return { what: what0, number: quantity0 };
};

const NO_NUMBER = 'How many? Write a whole number, 1 or more.';

/** The question in the address, or one of the first thing on offer, with what came of it. */
const asked = async (c: Context, context: UseCaseContext) => {
  const number = (c.req.query('number') ?? '1').trim();
  const quantity = wholeTyped(number);
  const what = c.req.query('what') ?? null;
  // What holds the date takes longest to find out: asked for by a page that was sent as a form, or after a date stands.
  const withLimits = wantsPart(c) ? c.req.query('holds') !== undefined : what !== null;
  const wantedOn = (c.req.query('wantedOn') ?? '').trim();
  const { wantedOn: date, faults } = questionTyped({ wantedOn }, await dateReading(context));
  const { answer, ...question } = await showQuestion(context, { what, quantity, wantedOn: date, withLimits });
  const about = { ...question, number, wantedOn };
  const wrongDate = errorsByField(faults);
  if (answer?.ok) return { ...about, facts: answer.value, errors: wrongDate };
  if (answer) return { ...about, facts: null, errors: { ...asErrors(answer.faults), ...wrongDate } };
  const errors = quantity === null ? { number: NO_NUMBER } : { what: 'Choose what is asked for.' };
  return { ...about, facts: null, errors: question.offers.length === 0 ? {} : { ...errors, ...wrongDate } };
};

export const firstRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.get('/', async (c) => {
    const now = context();
    const question = await asked(c, now);
    // Nothing is swapped while what is asked about is still looked for.
    if (c.req.query('still') !== undefined && question.facts?.isLooking) return c.body(null, 204);
    const answer = <LiveParts asked={question} today={question.today} />;
    if (wantsPart(c)) return page(c, { title: 'When?' }, answer);
    const improving = now.background?.improving() ?? false;
    const content = (
      <FirstPage
        model={await showFirst(now)}
        asked={question}
        notice={await doneNotice(c, now)}
        improving={improving}
      />
    );
    const wrong = Object.values(question.errors).some(Boolean);
    return page(c, { title: 'When could it be ready?', at: 'when', yardName: question.yardName }, content, {
      status: wrong ? 422 : 200,
    });
  });
  routes.get('/two-at-once', async (c) => {
    const [what, number] = [c.req.query('what') ?? '', (c.req.query('number') ?? '1').trim()];
    const model = await askPairs(context(), what, wholeTyped(number));
    if (wantsPart(c)) return page(c, { title: 'Two at once' }, <PairList model={model} />);
    const content = <TwoAtOncePage model={model} back={`/?${new URLSearchParams({ what, number })}`} />;
    const frame = { title: 'Two changes at once', at: 'when', yardName: model.yardName } as const;
    return page(c, frame, content, { status: model.asked ? 200 : 422 });
  });
  routes.get('/standing', async (c) => {
    const now = context();
    const improving = now.background?.improving() ?? false;
    return page(c, { title: 'When?' }, <Standing model={await showFirst(now)} improving={improving} />);
  });
  routes.post('/notices/read', async (c) => {
    const typed = await readForm(c);
    await dismissNotice(context(), wholeTyped(typed.notice) ?? 0);
    return c.redirect(ownPath(typed.back), 303);
  });
  return routes;
};
