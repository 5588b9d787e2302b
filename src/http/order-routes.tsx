import type { Context } from 'hono';
import { Hono } from 'hono';
import { PAPER_KINDS, type PaperKind } from '../../shared/money.ts';
import { isDate } from '../../shared/time.ts';
import { BillPage, QuotePage, SentPaperPage } from '../../views/money/quote-page.tsx';
import { paperName } from '../../views/money/quote-text.ts';
import { GOING_OUT, GoingOutPage } from '../../views/orders/going-out-page.tsx';
import { orderPath } from '../../views/orders/order-facts.ts';
import { LimitList } from '../../views/orders/order-limits.tsx';
import { Odds } from '../../views/orders/order-odds.tsx';
import { OrderPage } from '../../views/orders/order-page.tsx';
import { OrdersPage, OrdersPart } from '../../views/orders/orders-page.tsx';
import { PastOrdersPage, PastOrdersPart } from '../../views/orders/past-orders-page.tsx';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { showOwing } from '../usecases/money/owing.ts';
import { payOrder, priceOrder, sendPaper, unpayOrder } from '../usecases/money/set-order-money.ts';
import { type OrderMoneyModel, showOrderMoney } from '../usecases/money/show-order-money.ts';
import { cancelOrder } from '../usecases/orders/cancel-order.ts';
import { WHICH_ORDERS, WHICH_PAST } from '../usecases/orders/find-orders.ts';
import { handOverOrder } from '../usecases/orders/hand-over-order.ts';
import { handOverPartOf } from '../usecases/orders/hand-over-part.ts';
import { holdOrder, holdUntil } from '../usecases/orders/hold-order.ts';
import { limitsOfOrder } from '../usecases/orders/limits-of-order.ts';
import { oddsOfOrder } from '../usecases/orders/odds-of-order.ts';
import { promiseOrder } from '../usecases/orders/promise-order.ts';
import { showGoingOut } from '../usecases/orders/show-going-out.ts';
import { showOrder } from '../usecases/orders/show-order.ts';
import { showOrders, showPastOrders } from '../usecases/orders/show-orders.ts';
import { splitOrder } from '../usecases/orders/split-order.ts';
import { takeUpOrder } from '../usecases/orders/take-up-order.ts';
import type { RefusedForm } from '../usecases/plan/save-edit.ts';
import { handOverTyped, holdTyped, promiseTyped } from '../usecases/typed/order-form.ts';
import { asSent, atOnce, withDays } from './form-route.tsx';
import { formsOnPage, type PageForm } from './forms-on-page.tsx';
import { doneNotice } from './notice.ts';
import { orderFirst } from './order-first.ts';
import { FIRST_PAINT_MS, page, wantsPart } from './page.tsx';
import type { Screens } from './screens.ts';
import { searched } from './searched.ts';

const idOf = (c: Context): string => c.req.param('id') ?? '';

const orderPage = async (c: Context, context: UseCaseContext, refused: RefusedForm | null) => {
  const id = idOf(c);
  const isPatient = wantsPart(c) || c.req.query('wait') !== undefined;
  const model = await showOrder(context, id, isPatient ? undefined : FIRST_PAINT_MS);
  if (!model) return null;
  const limits = c.req.query('holds') === undefined ? undefined : await limitsOfOrder(context, id);
  const odds = c.req.query('sure') === undefined ? undefined : await oddsOfOrder(context, id);
  const money = await showOrderMoney(context, id);
  const { errors = {}, typed = {} } = refused ?? {};
  const asked = refused?.effect ? { form: refused.form, effect: refused.effect } : null;
  const shown = { model, money, errors, typed, asked, limits, odds, notice: await doneNotice(c, context) };
  const waiting = model.tell === 'coming' ? { withoutScript: `${orderPath(id)}?wait=yes` } : {};
  const frame = { title: `Order ${id}`, at: 'orders', yardName: model.yardName, ...waiting } as const;
  return { frame, content: <OrderPage {...shown} holdUntil={holdUntil(model.today)} /> };
};

/** What can be done from an order's page, by the end of its address. */
const FORMS = {
  promise: orderFirst(withDays(promiseTyped), (days, c) => promiseOrder(idOf(c), days)),
  hold: orderFirst(withDays(holdTyped), (days, c) => holdOrder(idOf(c), days)),
  'take-up': orderFirst(withDays(promiseTyped), (days, c) => takeUpOrder(idOf(c), days)),
  split: atOnce(asSent, (context, _fields, c) => splitOrder(context, idOf(c))),
  cancel: atOnce(asSent, (context, _fields, c) => cancelOrder(context, idOf(c))),
  'hand-over-part': atOnce(asSent, (context, fields, c) => handOverPartOf(context, idOf(c), fields)),
  price: atOnce(asSent, (context, fields, c) => priceOrder(context, idOf(c), fields)),
  pay: atOnce(asSent, (context, fields, c) => payOrder(context, idOf(c), fields)),
  unpay: atOnce(asSent, (context, fields, c) => unpayOrder(context, idOf(c), fields)),
  quote: atOnce(asSent, (context, _fields, c) => sendPaper(context, idOf(c), 'quote')),
  bill: atOnce(asSent, (context, _fields, c) => sendPaper(context, idOf(c), 'bill')),
  'hand-over': atOnce(handOverTyped, (context, how, c) => handOverOrder(context, idOf(c), how)),
};

/** What goes to the customer about money. */
const PAPERS = { quote: QuotePage, bill: BillPage } as const;

const paperPage = async (c: Context, context: UseCaseContext, what: keyof typeof PAPERS) => {
  const model: OrderMoneyModel | null = await showOrderMoney(context, idOf(c));
  if (!model) return c.notFound();
  const Paper = PAPERS[what];
  const title = `${what === 'quote' ? 'Quote' : 'Bill'} ${model.id}`;
  return page(c, { title, at: 'orders', yardName: model.yardName }, <Paper model={model} />);
};

/** A quote or a bill as it was sent, by its number. */
const sentPage = async (c: Context, context: UseCaseContext, kind: PaperKind) => {
  const model = await showOrderMoney(context, idOf(c));
  const paper = model?.papers.find((one) => one.kind === kind && String(one.number) === c.req.param('number'));
  if (!model || !paper) return c.notFound();
  const title = `${paperName(paper, model.id)}, as it was sent`;
  return page(c, { title, at: 'orders', yardName: model.yardName }, <SentPaperPage model={model} paper={paper} />);
};

/** All its forms are of the one order, so a fault stands at its field whichever it was. */
const pageForms = Object.fromEntries(
  Object.entries(FORMS).map(([name, save]): [string, PageForm] => [name, { save, form: () => name }]),
);

export const orderRoutes = (screens: Screens): Hono => {
  const { context } = screens;
  const routes = new Hono();
  routes.get('/orders', async (c) => {
    const now = context();
    const { from = '' } = c.req.query();
    const model = await showOrders(now, searched(c, WHICH_ORDERS), isDate(from) ? from : null);
    const owing = await showOwing(now);
    if (wantsPart(c)) return page(c, { title: 'Orders' }, <OrdersPart model={model} owing={owing} />);
    const notice = await doneNotice(c, now);
    return page(
      c,
      { title: 'Orders', at: 'orders', yardName: model.yardName },
      <OrdersPage model={model} owing={owing} notice={notice} />,
    );
  });
  routes.get('/orders/past', async (c) => {
    const model = await showPastOrders(context(), searched(c, WHICH_PAST));
    if (wantsPart(c)) return page(c, { title: 'Past orders' }, <PastOrdersPart model={model} />);
    const frame = { title: 'Past orders', at: 'orders', yardName: model.yardName } as const;
    return page(c, frame, <PastOrdersPage model={model} />);
  });
  routes.get(GOING_OUT, async (c) => {
    const model = await showGoingOut(context(), {
      on: c.req.query('on'),
      payload: c.req.query('payload')?.slice(0, 40),
    });
    const frame = { title: 'Going out', at: 'orders', yardName: model.yardName, place: 'yard' } as const;
    return page(c, frame, <GoingOutPage model={model} />, { status: model.payloadFault === null ? 200 : 422 });
  });
  routes.get('/orders/:id/limits', async (c) => {
    const [now, id] = [context(), c.req.param('id')];
    // Which day could be told is not waited for.
    const model = await showOrder(now, id, 0);
    if (!model) return c.notFound();
    const limits = await limitsOfOrder(now, id);
    return page(c, { title: 'What holds it up' }, <LimitList limits={limits} today={model.today} />);
  });
  routes.get('/orders/:id/odds', async (c) => {
    const [now, id] = [context(), c.req.param('id')];
    // Which day could be told is not waited for.
    const model = await showOrder(now, id, 0);
    if (!model) return c.notFound();
    return page(c, { title: 'How sure is that day?' }, <Odds odds={await oddsOfOrder(now, id)} today={model.today} />);
  });
  routes.get('/orders/:id/quote', (c) => paperPage(c, context(), 'quote'));
  routes.get('/orders/:id/bill', (c) => paperPage(c, context(), 'bill'));
  for (const kind of PAPER_KINDS) routes.get(`/orders/:id/${kind}/:number`, (c) => sentPage(c, context(), kind));
  routes.route(
    '/',
    formsOnPage(screens, { path: '/orders/:id', show: orderPage, next: (c) => orderPath(idOf(c)) }, pageForms),
  );
  return routes;
};
