import type { Context } from 'hono';
import { Hono } from 'hono';
import { orderPath } from '../../views/orders/order-facts.ts';
import { OrderFormPage, ReadySoFar } from '../../views/orders/order-form-page.tsx';
import { fullDayText } from '../../views/parts/day-text.ts';
import type { UseCaseContext } from '../usecases/core/context.ts';
import { askWhen } from '../usecases/first/ask-when.ts';
import { editOrder } from '../usecases/orders/edit-order.ts';
import { holdUntil } from '../usecases/orders/hold-order.ts';
import { orderReading, showOrderForm } from '../usecases/orders/show-order-form.ts';
import { takeOrder } from '../usecases/orders/take-order.ts';
import type { FormFields } from '../usecases/typed/form-fields.ts';
import { linesTyped, orderRows, orderTyped } from '../usecases/typed/order-form.ts';
import { errorsByField, readForm } from './form.ts';
import { page, seeDone } from './page.tsx';
import type { Screens } from './screens.ts';

/** When what is typed so far could be ready, or null while it can't be read. */
const readySoFar = async (context: UseCaseContext, typed: FormFields) => {
  const { lines, faults } = linesTyped(typed, await orderReading(context));
  if (lines.length === 0 || faults.length > 0) return null;
  const answer = await askWhen(context, lines);
  return answer.ok ? answer.value : null;
};

const formPage = async (
  c: Context,
  context: UseCaseContext,
  id: string | null,
  typed: FormFields,
  errors: Record<string, string> = {},
) => {
  const form = await showOrderForm(context, id);
  if (!form) return c.notFound();
  const { yardName, today, offers, customers } = form;
  const ready = id === null ? await readySoFar(context, typed) : null;
  const content = (
    <OrderFormPage model={{ id, offers, customers, typed, rows: orderRows(typed), errors, ready, today }} />
  );
  const wrong = Object.keys(errors).length > 0;
  return page(c, { title: id === null ? 'Take order' : `Change order ${id}`, at: 'orders', yardName }, content, {
    status: wrong ? 422 : 200,
  });
};

/**
 * The form for a new order. With what was asked on the first page it has the date to promise filled in: without one the
 * order would stand behind all that are promised. To hold it, it also has the day until when.
 */
const newlyTyped = async (c: Context, context: UseCaseContext): Promise<FormFields> => {
  const { what = '', number = '', wantedOn = '', hold } = c.req.query();
  if (!what) return { quantity0: '1' };
  const typed = { what0: what, quantity0: number || '1', ...(wantedOn ? { wantedOn } : {}) };
  const ready = await readySoFar(context, typed);
  const promisedOn = ready?.promiseOn ?? ready?.earliestOn;
  if (!promisedOn) return typed;
  const today = (await showOrderForm(context, null))?.today;
  return {
    ...typed,
    promisedOn: fullDayText(promisedOn),
    ...(hold && today ? { heldUntil: fullDayText(holdUntil(today)) } : {}),
  };
};

/** How the fields of an order that is there stand. */
const typedBefore = async (context: UseCaseContext, id: string): Promise<FormFields | null> => {
  const order = (await showOrderForm(context, id))?.order;
  if (!order) return null;
  const { lines, ...fields } = order;
  const rows = lines.flatMap(({ what, quantity, was }, row) => [
    [`what${row}`, what],
    [`quantity${row}`, quantity],
    [`quantity${row}Was`, was],
  ]);
  const days = Object.fromEntries(
    (['wantedOn', 'promisedOn', 'heldUntil'] as const).map((name) => [name, fields[name] && fullDayText(fields[name])]),
  );
  return { ...fields, ...days, ...Object.fromEntries(rows), more: String(lines.length + 1) };
};

export const orderFormRoutes = ({ context }: Screens): Hono => {
  const routes = new Hono();
  routes.get('/orders/new', async (c) => formPage(c, context(), null, await newlyTyped(c, context())));
  routes.post('/orders/ready', async (c) => {
    const now = context();
    const ready = await readySoFar(now, await readForm(c));
    const today = (await showOrderForm(now, null))?.today ?? '';
    return page(c, { title: 'Ready' }, <ReadySoFar ready={ready} today={today} />);
  });
  routes.post('/orders', async (c) => {
    const typed = await readForm(c);
    if (typed.more) return formPage(c, context(), null, typed);
    const outcome = await takeOrder(context(), orderTyped(typed, await orderReading(context())));
    if (!outcome.ok) return formPage(c, context(), null, typed, errorsByField(outcome.faults));
    return seeDone(c, orderPath(outcome.value.value.id), outcome.value.change, typed);
  });
  routes.get('/orders/:id/edit', async (c) => {
    const typed = await typedBefore(context(), c.req.param('id'));
    return typed ? formPage(c, context(), c.req.param('id'), typed) : c.notFound();
  });
  routes.post('/orders/:id/edit', async (c) => {
    const id = c.req.param('id');
    const typed = await readForm(c);
    if (typed.more) return formPage(c, context(), id, typed);
    const outcome = await editOrder(context(), id, orderTyped(typed, await orderReading(context())));
    if (!outcome.ok) return formPage(c, context(), id, typed, errorsByField(outcome.faults));
    return seeDone(c, orderPath(id), outcome.value.change, typed);
  });
  return routes;
};
