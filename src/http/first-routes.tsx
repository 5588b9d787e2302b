import type { Context } from 'hono';
import { Hono } from 'hono';
import { MOST_ROWS, questionOf, rowField } from '../../views/first/asked.ts';
import { FirstPage, Standing } from '../../views/first/first-page.tsx';
import { HowSurePage, QuestionOddsPart } from '../../views/first/how-sure.tsx';
import { ReadyPart } from '../../views/first/ready-part.tsx';
import { PairList, TwoAtOncePage } from '../../views/first/two-at-once.tsx';
import { dismissNotice } from '../usecases/changes/dismiss-notice.ts';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { askPairs } from '../usecases/first/ask-pairs.ts';
import { oddsOfQuestion } from '../usecases/first/odds-of-question.ts';
import { showFirst } from '../usecases/first/show-first.ts';
import { type QuestionModel, showQuestion } from '../usecases/first/show-question.ts';
import { dateReading } from '../usecases/plan/date-reading.ts';
import { wholeTyped } from '../usecases/typed/form-fields.ts';
import { questionTyped } from '../usecases/typed/order-form.ts';
import { errorsByField, readForm } from './form.ts';
import { doneNotice } from './notice.ts';
import { FIRST_PAINT_MS, ownPath, page, wantsPart } from './page.tsx';
import { rowsInAddress } from './question-rows.ts';
import type { Screens } from './screens.ts';

/** The fields of the question are called by the lines they make. */
const asErrors = (faults: Parameters<typeof errorsByField>[0]) => {
  const errors = errorsByField(faults);
  return Object.fromEntries(
    Array.from({ length: MOST_ROWS }, (_, row) => [
      [rowField('what', row), errors[`what${row}`]],
      [rowField('number', row), errors[`quantity${row}`]],
    ]).flat(),
  );
};

const NO_NUMBER = 'How many? Write a whole number, 1 or more.';

const asRows = (rows: ReturnType<typeof rowsInAddress>) =>
  rows.map(({ what, number }) => ({ what, quantity: wholeTyped(number) }));

/** The rows of a question on a page of its own, where nothing is chosen beforehand. */
const chosenRows = (c: Context) =>
  asRows(rowsInAddress(c)).map(({ what, quantity }) => ({ what: what ?? '', quantity }));

/** What cannot be read of rows that made no line. */
const rowErrors = (rows: QuestionModel['rows']) =>
  Object.fromEntries(
    rows.map(({ quantity }, row) =>
      quantity === null ? [rowField('number', row), NO_NUMBER] : [rowField('what', row), 'Choose what is asked for.'],
    ),
  );

/** The question in the address, or one of the first thing on offer, with what came of it. */
const asked = async (c: Context, context: UseCaseContext) => {
  const typed = rowsInAddress(c);
  // What holds the date takes longest to find out: only whoever looks at it asks for it.
  const withLimits = c.req.query('holds') !== undefined;
  // A page is there at once and fills its date in; a part of one, or a browser without script, waits for it.
  const isPatient = wantsPart(c) || c.req.query('wait') !== undefined;
  const wantedOn = (c.req.query('wantedOn') ?? '').trim();
  const { wantedOn: date, faults } = questionTyped({ wantedOn }, await dateReading(context));
  const { answer, rows, ...question } = await showQuestion(context, {
    rows: asRows(typed),
    wantedOn: date,
    ...{ withLimits, withPushes: withLimits || !wantsPart(c) },
    ...(isPatient ? {} : { patienceMs: FIRST_PAINT_MS }),
  });
  const shown = rows.map(({ what }, row) => ({ what, number: typed[row]?.number ?? '' }));
  const about = { ...question, rows: shown, wantedOn, wanted: date };
  const wrongDate = errorsByField(faults);
  if (answer?.ok) return { ...about, facts: answer.value, errors: wrongDate };
  if (answer) return { ...about, facts: null, errors: { ...asErrors(answer.faults), ...wrongDate } };
  if (question.isComing) return { ...about, facts: null, errors: wrongDate };
  return { ...about, facts: null, errors: question.offers.length === 0 ? {} : { ...rowErrors(rows), ...wrongDate } };
};

export const firstRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.get('/', async (c) => {
    const now = context();
    const question = await asked(c, now);
    // Nothing is swapped while what is asked about is still looked for.
    if (c.req.query('still') !== undefined && question.facts?.isLooking) return c.body(null, 204);
    const answer = <ReadyPart asked={question} today={question.today} />;
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
    const waiting = question.isComing ? { withoutScript: `/?${questionOf(question)}&wait=yes` } : {};
    const frame = { title: 'When could it be ready?', at: 'when', yardName: question.yardName, ...waiting } as const;
    return page(c, frame, content, { status: wrong ? 422 : 200 });
  });
  routes.get('/two-at-once', async (c) => {
    const model = await askPairs(context(), chosenRows(c));
    if (wantsPart(c)) return page(c, { title: 'Two at once' }, <PairList model={model} />);
    const content = <TwoAtOncePage model={model} back={`/${new URL(c.req.url).search}`} />;
    const frame = { title: 'Two changes at once', at: 'when', yardName: model.yardName } as const;
    return page(c, frame, content, { status: model.asked ? 200 : 422 });
  });
  routes.get('/how-sure', async (c) => {
    const now = context();
    const read = questionTyped({ wantedOn: (c.req.query('wantedOn') ?? '').trim() }, await dateReading(now));
    const model = await oddsOfQuestion(now, chosenRows(c), read.wantedOn);
    if (wantsPart(c)) return page(c, { title: 'How sure is it?' }, <QuestionOddsPart model={model} />);
    const content = <HowSurePage model={model} back={`/${new URL(c.req.url).search}`} />;
    const frame = { title: 'How sure is it?', at: 'when', yardName: model.yardName } as const;
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
