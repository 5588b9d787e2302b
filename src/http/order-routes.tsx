import type { Context } from 'hono';
import { Hono } from 'hono';
import { orderPath } from '../../views/orders/order-facts.ts';
import { LimitList } from '../../views/orders/order-limits.tsx';
import { OrderPage } from '../../views/orders/order-page.tsx';
import { OrdersPage, OrdersPart } from '../../views/orders/orders-page.tsx';
import { PastOrdersPage, PastOrdersPart } from '../../views/orders/past-orders-page.tsx';
import type { Outcome, UseCaseContext } from '../usecases/core/context.ts';
import { cancelOrder } from '../usecases/orders/cancel-order.ts';
import { WHICH_ORDERS, WHICH_PAST } from '../usecases/orders/find-orders.ts';
import { handOverOrder } from '../usecases/orders/hand-over-order.ts';
import { holdOrder, holdUntil } from '../usecases/orders/hold-order.ts';
import { limitsOfOrder } from '../usecases/orders/limits-of-order.ts';
import { promiseOrder } from '../usecases/orders/promise-order.ts';
import { showOrder } from '../usecases/orders/show-order.ts';
import { showOrders, showPastOrders } from '../usecases/orders/show-orders.ts';
import type { Changed } from '../usecases/plan/changing.ts';
import { dateReading } from '../usecases/plan/date-reading.ts';
import type { FormFields } from '../usecases/typed/form-fields.ts';
import { holdTyped, promiseTyped } from '../usecases/typed/order-form.ts';
import { errorsByField, readForm } from './form.ts';
import { doneNotice } from './notice.ts';
import { page, seeDone, wantsPart } from './page.tsx';
import type { Screens } from './screens.ts';
import { searched } from './searched.ts';

const orderPage = async (
  c: Context,
  context: UseCaseContext,
  id: string,
  wrong?: { errors: Record<string, string>; typed: FormFields },
) => {
  const model = await showOrder(context, id);
  if (!model) return c.notFound();
  const limits = c.req.query('holds') === undefined ? undefined : await limitsOfOrder(context, id);
  const { errors = {}, typed = {} } = wrong ?? {};
  const notice = await doneNotice(c, context);
  const content = (
    <OrderPage
      model={model}
      notice={notice}
      errors={errors}
      typed={typed}
      holdUntil={holdUntil(model.today)}
      limits={limits}
    />
  );
  return page(c, { title: `Order ${id}`, at: 'orders', yardName: model.yardName }, content, {
    status: wrong ? 422 : 200,
  });
};

/** What a button on an order's page does, given what was typed beside it. */
type Deed = (context: UseCaseContext, id: string, typed: FormFields) => Promise<Outcome<Changed<unknown>>>;

const promised: Deed = async (context, id, fields) => {
  const read = promiseTyped(fields, await dateReading(context));
  return read.ok ? promiseOrder(context, id, read.value) : read;
};

const held: Deed = async (context, id, fields) => {
  const read = holdTyped(fields, await dateReading(context));
  return read.ok ? holdOrder(context, id, read.value) : read;
};

const DEEDS = new Map<string, Deed>(
  Object.entries({
    promise: promised,
    hold: held,
    cancel: (context, id) => cancelOrder(context, id),
    'hand-over': (context, id, typed) => handOverOrder(context, id, { evenShort: typed.evenShort === 'yes' }),
  }),
);

export const orderRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.get('/orders', async (c) => {
    const now = context();
    const model = await showOrders(now, searched(c, WHICH_ORDERS));
    if (wantsPart(c)) return page(c, { title: 'Orders' }, <OrdersPart model={model} />);
    const notice = await doneNotice(c, now);
    return page(
      c,
      { title: 'Orders', at: 'orders', yardName: model.yardName },
      <OrdersPage model={model} notice={notice} />,
    );
  });
  routes.get('/orders/past', async (c) => {
    const model = await showPastOrders(context(), searched(c, WHICH_PAST));
    if (wantsPart(c)) return page(c, { title: 'Past orders' }, <PastOrdersPart model={model} />);
    const frame = { title: 'Past orders', at: 'orders', yardName: model.yardName } as const;
    return page(c, frame, <PastOrdersPage model={model} />);
  });
  routes.get('/orders/:id/limits', async (c) => {
    const [now, id] = [context(), c.req.param('id')];
    const model = await showOrder(now, id);
    if (!model) return c.notFound();
    const limits = await limitsOfOrder(now, id);
    return page(c, { title: 'What holds it' }, <LimitList limits={limits} today={model.today} />);
  });
  routes.get('/orders/:id', (c) => orderPage(c, context(), c.req.param('id')));
  routes.post('/orders/:id/:deed', async (c) => {
    const [id, deed] = [c.req.param('id'), DEEDS.get(c.req.param('deed'))];
    if (!deed) return c.notFound();
    const typed = await readForm(c);
    const outcome = await deed(context(), id, typed);
    if (outcome.ok) return seeDone(c, orderPath(id), outcome.value.change, typed);
    return orderPage(c, context(), id, { errors: errorsByField(outcome.faults), typed });
  });
  return routes;
};
