import type { Context } from 'hono';
import { Hono } from 'hono';
import { type AskedModel, FirstPage, ReadyPart } from '../../views/first/first-page.tsx';
import { askWhen } from '../usecases/ask-when.ts';
import { dismissNotice } from '../usecases/dismiss-notice.ts';
import { lineOf } from '../usecases/order-contents.ts';
import { showFirst } from '../usecases/show-first.ts';
import { showOffers } from '../usecases/show-offers.ts';
import type { Screens } from './app.ts';
import { errorsByField, readForm, wholeTyped } from './form.ts';
import { doneNotice } from './notice.ts';
import { ownPath, page, wantsFragment } from './page.tsx';

/** The fields of the question are called by the one line they make. */
const asErrors = (faults: Parameters<typeof errorsByField>[0]) => {
  const { what0, quantity0 } = errorsByField(faults);
  return { what: what0, number: quantity0 };
};

const NO_NUMBER = 'How many? Write a whole number, 1 or more.';

/** The question in the address, or the first thing on offer and one of it. */
const asked = async (
  c: Context,
  context: ReturnType<Screens['context']>,
): Promise<AskedModel & { yardName: string; today: string }> => {
  const { offers, yardName, today } = await showOffers(context);
  const what = c.req.query('what') ?? offers[0]?.what ?? '';
  const number = (c.req.query('number') ?? '1').trim();
  const about = { offers, what, number, yardName, today };
  const quantity = wholeTyped(number);
  if (offers.length === 0) return { ...about, facts: null, errors: {} };
  if (quantity === null) return { ...about, facts: null, errors: { number: NO_NUMBER } };
  const line = lineOf(what, quantity);
  if (!line) return { ...about, facts: null, errors: { what: 'Choose what is asked for.' } };
  const answer = await askWhen(context, [{ row: 0, line }]);
  return answer.ok
    ? { ...about, facts: answer.value, errors: {} }
    : { ...about, facts: null, errors: asErrors(answer.faults) };
};

export const firstRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.get('/', async (c) => {
    const now = context();
    const question = await asked(c, now);
    const answer = <ReadyPart asked={question} today={question.today} />;
    if (wantsFragment(c)) return page(c, { title: 'When?' }, answer);
    const content = <FirstPage model={await showFirst(now)} asked={question} notice={await doneNotice(c, now)} />;
    const wrong = Object.values(question.errors).some(Boolean);
    return page(c, { title: 'When could it be ready?', at: 'when', yardName: question.yardName }, content, {
      status: wrong ? 422 : 200,
    });
  });
  routes.post('/notices/read', async (c) => {
    const typed = await readForm(c);
    await dismissNotice(context(), wholeTyped(typed.notice) ?? 0);
    return c.redirect(ownPath(typed.back), 303);
  });
  return routes;
};
