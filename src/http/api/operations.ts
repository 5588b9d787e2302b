import type { z } from 'zod';
import { showBuying } from '../../usecases/buying/show-buying.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../../usecases/core/context.ts';
import { askWhen } from '../../usecases/first/ask-when.ts';
import { showMoulds } from '../../usecases/moulds/show-moulds.ts';
import { cancelOrder } from '../../usecases/orders/cancel-order.ts';
import { offersOf } from '../../usecases/orders/order-contents.ts';
import { ordersTold, orderTold } from '../../usecases/orders/orders-told.ts';
import { packOrder } from '../../usecases/orders/pack-order.ts';
import { saveOrder } from '../../usecases/orders/save-order.ts';
import { takeOrder } from '../../usecases/orders/take-order.ts';
import { currentPlan } from '../../usecases/plan/make-plan.ts';
import type { Saved } from '../../usecases/plan/save-edit.ts';
import { recordCoat } from '../../usecases/today/record-coat.ts';
import { recordPour } from '../../usecases/today/record-pour.ts';
import { recordPrep } from '../../usecases/today/record-prep.ts';
import { recordStrip } from '../../usecases/today/record-strip.ts';
import type { SessionStep } from '../../usecases/today/session-step.ts';
import { showToday } from '../../usecases/today/show-today.ts';
import { lineOf } from '../../usecases/typed/what-ordered.ts';
import * as shapes from './shapes.ts';

type Shape = z.ZodType;

/** What is common to all that can be asked. */
interface About {
  /** Under `/api/v1`, with parameters as OpenAPI writes them. */
  path: string;
  summary: string;
  /** What the answer is like. */
  answer: Shape;
}

/** Something that is read; answered with its ETag. `find` gives null where there is no such thing. */
export interface Reading extends About {
  method: 'get' | 'post';
  query?: Shape;
  body?: Shape;
  find(context: UseCaseContext, asked: Asked): Promise<Outcome<unknown> | null>;
}

/** Something that is done, once for each Idempotency-Key. */
export interface Doing extends About {
  method: 'post';
  body?: Shape;
  /** 201 where something new came of it. */
  status: 200 | 201;
  /** It is done to what was seen: If-Match with its ETag has to come along. Null where there is no such thing. */
  seen?: (context: UseCaseContext, params: Asked['params']) => Promise<unknown>;
  act(context: UseCaseContext, asked: Asked): Promise<Saved<unknown>>;
}

/** What came, read by the shapes of the operation. */
interface Asked {
  params: Readonly<Record<string, string>>;
  // biome-ignore lint/suspicious/noExplicitAny: each operation reads it by its own shape, in `reading` and `doing`.
  query: any;
  // biome-ignore lint/suspicious/noExplicitAny: as above.
  body: any;
}

const DEFAULT_LIMIT = 50;

type Lines = z.infer<typeof shapes.askedFor>['lines'];

const linesOf = (lines: Lines): Outcome<{ row: number; line: NonNullable<ReturnType<typeof lineOf>> }[]> => {
  const read = lines.map(({ what, quantity }, row) => ({ row, line: lineOf(what, quantity) }));
  const wrong = read.find(({ line }) => line === null);
  if (wrong) return refuse(`what${wrong.row}`, 'Name one of /offers.');
  return done(read.map(({ row, line }) => ({ row, line: line! })));
};

const whenReady = async (context: UseCaseContext, { lines, notBefore }: z.infer<typeof shapes.askedFor>) => {
  const read = linesOf(lines);
  if (!read.ok) return read;
  const answer = await askWhen(context, read.value, notBefore ?? null);
  if (!answer.ok) return answer;
  const { earliestOn, promiseOn, promiseOdds, ifFirstOn, isProven, isLooking, reason } = answer.value;
  return done({ earliestOn, promiseOn, promiseOdds, ifFirstOn, isProven, isLooking, reason });
};

const take = async (context: UseCaseContext, body: z.infer<typeof shapes.orderToTake>): Promise<Saved<unknown>> => {
  const read = linesOf(body.lines);
  if (!read.ok) return { kind: 'refused', faults: read.faults };
  const { customer = '', phone = '', address = '', note = '' } = body;
  const { wantedOn, notBefore, promisedOn, heldUntil, slip, seen } = body;
  const days = {
    wantedOn: wantedOn ?? null,
    notBefore: notBefore ?? null,
    promisedOn: promisedOn ?? null,
    heldUntil: heldUntil ?? null,
  };
  const who = { customer: customer.trim(), phone: phone.trim(), address: address.trim(), note: note.trim() };
  const draft = { ...who, ...days, next: {}, slip: slip ?? ('rather not' as const), lines: read.value, unread: [] };
  return saveOrder(context, takeOrder(draft), seen);
};

const saved = async (acting: Promise<Outcome<{ value: unknown; change: number }>>): Promise<Saved<unknown>> => {
  const outcome = await acting;
  if (!outcome.ok) return { kind: 'refused', faults: outcome.faults };
  return { kind: 'saved', value: outcome.value.value, change: outcome.value.change };
};

const mouldsOf = (step: SessionStep): string[] => {
  if (step.kind === 'batch') return step.pours.map(({ mould }) => mould);
  return 'mould' in step ? [step.mould] : [];
};

const today = async (context: UseCaseContext) => {
  const { now, session, steps } = await showToday(context);
  return {
    now,
    session: session && { date: session.date, start: session.start, end: session.end },
    steps: steps.map((step) => ({
      ...{ name: step.name, kind: step.kind, at: step.at, until: step.until },
      ...{ moulds: mouldsOf(step), order: step.kind === 'pack' ? step.order : null },
    })),
  };
};

const moulds = async (context: UseCaseContext) => ({
  items: (await showMoulds(context)).all.map((mould) => {
    const { id, condition, prepped: isSetUp, setFor, piece, nextPour, turnsToSealing, repairedOn } = mould;
    return {
      ...{ id, condition, isSetUp, setFor, turnsToSealing, repairedOn },
      piece: piece && { name: piece.name, filledAt: piece.filledAt, stripAt: piece.stripAt },
      nextPourAt: nextPour?.at ?? null,
    };
  }),
});

const stock = async (context: UseCaseContext) => ({
  items: (await showBuying(context)).stock.map(({ material, name, unit, inYard, spokenFor, spare, coming }) => ({
    ...{ material, name, unit, inYard, spokenFor, spare },
    coming: coming.map(({ quantity, on }) => ({ quantity, on })),
  })),
});

const buying = async (context: UseCaseContext) => ({
  items: (await showBuying(context)).weeks.flatMap(({ trips }) =>
    trips.map(({ name: supplier, day: on, fetched: isFetched, lines }) => ({
      ...{ supplier, on, isFetched },
      lines: lines.map(({ material, name, quantity, unit, orderBy }) => ({ material, name, quantity, unit, orderBy })),
    })),
  ),
});

const offers = async (context: UseCaseContext) => ({
  items: offersOf((await currentPlan(context)).yard, 'metric').map(({ what, name, kind, keptIn: unit }) => ({
    ...{ what, name, kind, unit },
  })),
});

const all =
  <T>(read: (context: UseCaseContext) => Promise<T>) =>
  async (context: UseCaseContext) =>
    done(await read(context));

export const READINGS: readonly Reading[] = [
  { method: 'get', path: '/offers', summary: 'What can be ordered', answer: shapes.offers, find: all(offers) },
  {
    method: 'post',
    path: '/ready',
    summary: 'When could it be ready? Nothing is recorded by asking',
    body: shapes.askedFor,
    answer: shapes.ready,
    find: (context, { body }) => whenReady(context, body),
  },
  {
    method: 'get',
    path: '/orders',
    summary: 'Open orders, by number',
    query: shapes.pageAsked,
    answer: shapes.orders,
    find: async (context, { query: { after, limit = DEFAULT_LIMIT } }) =>
      done(await ordersTold(context, { after, limit })),
  },
  {
    method: 'get',
    path: '/orders/{id}',
    summary: 'One order',
    answer: shapes.order,
    find: async (context, { params }) => {
      const order = await orderTold(context, params.id ?? '');
      return order && done(order);
    },
  },
  {
    method: 'get',
    path: '/moulds',
    summary: 'Moulds, and what state they are in',
    answer: shapes.moulds,
    find: all(moulds),
  },
  { method: 'get', path: '/stock', summary: 'What is in the yard', answer: shapes.stock, find: all(stock) },
  { method: 'get', path: '/buying', summary: 'What to buy by when', answer: shapes.buying, find: all(buying) },
  {
    method: 'get',
    path: '/today',
    summary: 'The session under way, or the next',
    answer: shapes.today,
    find: all(today),
  },
  {
    method: 'get',
    path: '/plan',
    summary: 'The plan, as a plan file',
    answer: shapes.plan,
    find: all(async (context) => (await currentPlan(context)).plan),
  },
];

export const DOINGS: readonly Doing[] = [
  {
    method: 'post',
    path: '/orders',
    summary: 'Takes an order',
    body: shapes.orderToTake,
    answer: shapes.taken,
    status: 201,
    act: (context, { body }) => take(context, body),
  },
  {
    method: 'post',
    path: '/orders/{id}/cancel',
    summary: 'Cancels an order',
    answer: shapes.done,
    status: 200,
    seen: (context, { id = '' }) => orderTold(context, id),
    act: (context, { params }) => saved(cancelOrder(context, params.id ?? '')),
  },
  {
    method: 'post',
    path: '/today/coated',
    summary: 'A mould got its sealing coat',
    body: shapes.coated,
    answer: shapes.done,
    status: 200,
    act: (context, { body }) => saved(recordCoat(context, body)),
  },
  {
    method: 'post',
    path: '/today/prepared',
    summary: 'A mould was set up',
    body: shapes.prepared,
    answer: shapes.done,
    status: 200,
    act: (context, { body: { isSealed: sealed = false, ...body } }) => saved(recordPrep(context, { ...body, sealed })),
  },
  {
    method: 'post',
    path: '/today/poured',
    summary: 'Moulds were filled from one batch',
    body: shapes.poured,
    answer: shapes.done,
    status: 200,
    act: (context, { body }) => {
      const { pours, bags = null, at: filledAt = null, ...more } = body as z.infer<typeof shapes.poured>;
      const filled = pours.map(({ mould, casting, order = null, isSealed: sealed = false }) => ({
        ...{ mould, casting, order, sealed },
      }));
      return saved(recordPour(context, { pours: filled, bags, filledAt, ...more }));
    },
  },
  {
    method: 'post',
    path: '/today/stripped',
    summary: 'A piece came out of its mould',
    body: shapes.stripped,
    answer: shapes.done,
    status: 200,
    act: (context, { body: { reason = '', ...body } }) => saved(recordStrip(context, { ...body, reason })),
  },
  {
    method: 'post',
    path: '/today/packed',
    summary: 'An order was packed',
    body: shapes.packed,
    answer: shapes.done,
    status: 200,
    act: (context, { body: { order, evenShort = false, ...body } }) =>
      saved(packOrder(context, order, { ...body, evenShort })),
  },
];
