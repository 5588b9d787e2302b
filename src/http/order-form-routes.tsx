import type { Context, Hono } from 'hono';
import { fullDayWords } from '../../shared/day-words.ts';
import { orderPath } from '../../views/orders/order-facts.ts';
import { OrderFormPage, PromisedField, ReadySoFar } from '../../views/orders/order-form-page.tsx';
import { done, type UseCaseContext } from '../usecases/core/context.ts';
import { askWhen, type ReadyFacts } from '../usecases/first/ask-when.ts';
import { type Merged, mergeMeanwhile } from '../usecases/orders/changed-meanwhile.ts';
import { editOrder, VERSION } from '../usecases/orders/edit-order.ts';
import { holdUntil } from '../usecases/orders/hold-order.ts';
import {
  type OrderFormFields,
  type OrderFormModel,
  orderAtVersion,
  orderReading,
  orderVersion,
  showOrderForm,
} from '../usecases/orders/show-order-form.ts';
import { takeOrder } from '../usecases/orders/take-order.ts';
import type { FormFields } from '../usecases/typed/form-fields.ts';
import { linesTyped, orderRows, orderTyped } from '../usecases/typed/order-form.ts';
import { readForm } from './form.ts';
import { type FormRoute, formPage, formRoute, pageRoute, type Show } from './form-route.tsx';
import { onceMark } from './once.ts';
import { orderFirst } from './order-first.ts';
import { page } from './page.tsx';
import { rowsInAddress } from './question-rows.ts';
import type { Screens } from './screens.ts';

/** When what is typed so far could be ready, or null while it can't be read. A day that can't be read holds nothing back. */
const readySoFar = async (context: UseCaseContext, typed: FormFields) => {
  const reading = await orderReading(context);
  const { lines, faults } = linesTyped(typed, reading);
  if (lines.length === 0 || faults.length > 0) return null;
  const answer = await askWhen(context, lines, orderTyped(typed, reading).notBefore);
  return answer.ok ? answer.value : null;
};

/** The day to tell of an answer, as a form has it; null where it cannot be made. */
const dayToFillIn = (ready: ReadyFacts | null): string | null => {
  const on = ready?.promiseOn ?? ready?.earliestOn;
  return on ? fullDayWords(on) : null;
};

/**
 * The form for a new order. With what was asked on the first page it has the date to promise filled in: without one the
 * order would stand behind all that are promised. To hold it, it also has the day until when.
 */
const newlyTyped = async (c: Context, context: UseCaseContext): Promise<FormFields> => {
  const { wantedOn = '', hold } = c.req.query();
  const rows = rowsInAddress(c);
  if (!rows[0]?.what) return { quantity0: '1' };
  const asked = rows.flatMap(({ what, number }, row) => [
    [`what${row}`, what ?? ''],
    [`quantity${row}`, number || '1'],
  ]);
  const typed: FormFields = { ...Object.fromEntries(asked), ...(wantedOn ? { wantedOn } : {}) };
  const promisedOn = dayToFillIn(await readySoFar(context, typed));
  if (promisedOn === null) return typed;
  const today = (await showOrderForm(context, null))?.today;
  return {
    ...typed,
    ...{ promisedOn, filledIn: promisedOn },
    ...(hold && today ? { heldUntil: fullDayWords(holdUntil(today)) } : {}),
  };
};

/** The fields of a form as an order fills them in. */
const fieldsOf = (order: OrderFormFields): FormFields => {
  const { lines, ...fields } = order;
  const rows = lines.flatMap(({ what, quantity, was }, row) => [
    [`what${row}`, what],
    [`quantity${row}`, quantity],
    [`quantity${row}Was`, was],
  ]);
  const days = Object.fromEntries(
    (['wantedOn', 'notBefore', 'promisedOn', 'heldUntil'] as const).map((name) => [
      name,
      fields[name] && fullDayWords(fields[name]),
    ]),
  );
  return { ...fields, ...days, ...Object.fromEntries(rows) };
};

/** The form of an order that is there as it stands now, with what it was filled in from. */
const typedBefore = ({ order }: OrderFormModel): FormFields | null =>
  order && { ...fieldsOf(order), version: orderVersion(order), more: String(order.lines.length + 1) };

/** The same as it is once somebody else changed the order meanwhile: what they changed is taken over, or said. */
const typedMeanwhile = ({ order, offers }: OrderFormModel, typed: FormFields): Merged | null => {
  const base = orderAtVersion(typed.version);
  if (!order || !base) return null;
  const nameOf = (what: string) => offers.find((offer) => offer.what === what)?.name ?? what;
  const merged = mergeMeanwhile({ base: fieldsOf(base), now: fieldsOf(order), typed }, nameOf);
  return { ...merged, typed: { ...merged.typed, version: orderVersion(order) } };
};

const idOf = (c: Context): string | null => c.req.param('id') ?? null;

const orderFormPage: Show = async (c, context, { typed: sent, errors, effect }) => {
  const id = idOf(c);
  const form = await showOrderForm(context, id);
  if (!form) return null;
  const merged = sent && errors[VERSION] ? typedMeanwhile(form, sent) : null;
  const typed = merged?.typed ?? sent ?? (id === null ? await newlyTyped(c, context) : typedBefore(form));
  if (!typed) return null;
  const { yardName, today, offers, customers } = form;
  const ready = id === null ? await readySoFar(context, typed) : null;
  const model = {
    id,
    offers,
    customers,
    typed,
    once: id === null ? (sent?.once ?? onceMark()) : null,
    rows: orderRows(typed),
    errors: { ...errors, ...merged?.errors },
    effect,
    ready,
    today,
  };
  return {
    frame: { title: id === null ? 'Take order' : `Change order ${id}`, at: 'orders', yardName },
    content: <OrderFormPage model={model} />,
  };
};

const read = async (fields: FormFields, context: UseCaseContext) =>
  done(orderTyped(fields, await orderReading(context)));

const shared = {
  show: orderFormPage,
  next: (_c: Context, order: { id: string } | null) => (order ? orderPath(order.id) : '/orders'),
  isUnfinished: ({ more }: FormFields) => Boolean(more),
};

const taking: FormRoute<{ id: string }> = { ...shared, path: '/orders', save: orderFirst(read, takeOrder) };

const editing: FormRoute<{ id: string }> = {
  ...shared,
  path: '/orders/:id/edit',
  save: orderFirst(read, (draft, c) => editOrder(idOf(c) ?? '', draft)),
};

/** The day to promise by an answer, where the field still says what the page filled in, and that is another; or else null. */
const dayThatFollows = ({ promisedOn, filledIn }: FormFields, ready: ReadyFacts | null): string | null => {
  const day = dayToFillIn(ready);
  return filledIn && promisedOn === filledIn && day !== filledIn ? day : null;
};

/** When what is typed so far could be ready, for the line below the fields. It changes nothing. */
const readyLine = async (c: Context, { context }: Screens) => {
  const now = context();
  const typed = await readForm(c);
  const ready = await readySoFar(now, typed);
  // Nothing is swapped while a sooner day is still looked for.
  if (typed.still && ready?.isLooking) return c.body(null, 204);
  const today = (await showOrderForm(now, null))?.today ?? '';
  const day = dayThatFollows(typed, ready);
  return page(
    c,
    { title: 'Ready' },
    <>
      <ReadySoFar ready={ready} today={today} />
      {day && <PromisedField typed={{ promisedOn: day, filledIn: day }} today={today} beside />}
    </>,
  );
};

export const orderFormRoutes = (screens: Screens): Hono =>
  pageRoute(screens, '/orders/new', orderFormPage)
    .post('/orders/ready', (c) => readyLine(c, screens))
    .route('/', formRoute(screens, taking))
    .route('/', formPage(screens, editing));
