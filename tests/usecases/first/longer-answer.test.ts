import { expect, test } from 'vitest';
import { dayNumber } from '../../../shared/time.ts';
import { quoteOrder } from '../../../src/engine/quote/quote.ts';
import { createApp } from '../../../src/http/app.ts';
import { type ComputationKind, type Compute, computeWithoutThread } from '../../../src/usecases/core/computations.ts';
import type { UseCaseContext } from '../../../src/usecases/core/context.ts';
import { askWhen, orderAskedAbout } from '../../../src/usecases/first/ask-when.ts';
import { saveOrder } from '../../../src/usecases/orders/save-order.ts';
import { takeOrder } from '../../../src/usecases/orders/take-order.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { planToAsk } from '../../../src/usecases/plan/plan-to-ask.ts';
import type { OrderDraft } from '../../../src/usecases/typed/order-form.ts';
import { BLANK_DRAFT } from '../../support/blank-draft.ts';
import { doneOf } from '../../support/outcomes.ts';
import { randomYard } from '../../support/random-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/** A yard in which the search at once says 25 May, and a longer one 17 April. */
const yard = randomYard(1001, 'typical');
const what = yard.kits[0]!.id;
const linesOf = (quantity: number): OrderDraft['lines'] => [{ row: 0, line: { kit: what, quantity } }];
const promised = (lines: OrderDraft['lines'], promisedOn: string): OrderDraft => ({
  ...BLANK_DRAFT,
  promisedOn,
  lines,
});

/** Threads that do it here: what was asked of them in turn, and longer questions that wait until they are let go on. */
const threads = () => {
  const asked: ComputationKind[] = [];
  const waiting: (() => Promise<unknown>)[] = [];
  const compute: Compute = (kind, question) => {
    asked.push(kind);
    return computeWithoutThread(kind, question);
  };
  const ponder: Compute = (kind, question) =>
    new Promise((resolve) => {
      asked.push(kind);
      const answer = async () => resolve(await computeWithoutThread(kind, question));
      waiting.push(answer);
    });
  const background = { planMade: () => {}, improving: () => false, compute, computeForRequest: compute, ponder };
  const goOn = async () => {
    await waiting.shift()!();
    await new Promise((resolve) => setImmediate(resolve));
  };
  return { asked, background, goOn, waiting };
};

const asking = async () => {
  const beside = threads();
  const context: UseCaseContext = { ...(await yardContext(yard)), background: beside.background };
  await currentPlan(context);
  const ask = async (quantity = 1) => doneOf(await askWhen(context, linesOf(quantity)));
  const count = (kind: ComputationKind) => beside.asked.filter((one) => one === kind).length;
  return { ...beside, context, ask, count };
};

test('a question is answered at once, and then as on the command line; the order is taken by the plan that was found', {
  timeout: 300_000,
}, async () => {
  const { context, ask, count, goOn } = await asking();
  const first = await ask();
  expect(first).toMatchObject({ isLooking: true, isProven: false });
  // Who asks the same again, in the same minute, gives nobody more to do.
  expect(await ask()).toEqual(first);
  expect([count('quote'), count('longer quote')]).toEqual([1, 1]);
  await goOn();
  const then = await ask();
  expect(then.isLooking).toBe(false);
  expect(dayNumber(then.earliestOn!)).toBeLessThan(dayNumber(first.earliestOn!) - 30);
  expect([count('quote'), count('longer quote')]).toEqual([1, 1]);
  const { yard: asked, memory, standing, plan } = await planToAsk(context);
  const order = orderAskedAbout(asked, linesOf(1));
  const command = quoteOrder(asked, order, { memory: memory!, standing: standing!, near: plan, longer: 'look' });
  expect(then).toMatchObject({ earliestOn: command.earliestOn, promiseOn: command.promiseOn });
  // A minute later, with nobody at work, it is the answer that it was.
  const [later] = [new Date(Date.parse(context.now) + 60_000).toISOString().replace('.000Z', 'Z')];
  expect(doneOf(await askWhen({ ...context, now: later }, linesOf(1)))).toMatchObject({ earliestOn: then.earliestOn });
  expect([count('quote'), count('longer quote')]).toEqual([1, 1]);
  const draft = promised(linesOf(1), then.promiseOn ?? then.earliestOn!);
  const saved = await saveOrder(context, takeOrder(draft), undefined);
  expect(saved).toMatchObject({ kind: 'saved' });
  const id = saved.kind === 'saved' ? saved.value.id : '';
  const taken = (await currentPlan(context)).plan.orders.find((one) => one.id === id)!;
  expect(dayNumber(taken.completesOn)).toBeLessThanOrEqual(dayNumber(then.earliestOn!));
  expect(taken.daysLate).toBe(0);
  // Another plan: what was answered beside the one before is forgotten.
  expect(await ask()).toMatchObject({ isLooking: true });
  expect(count('longer quote')).toBe(2);
});

test('of several questions that wait for a longer search the last one is next, and the others when they are asked again', {
  timeout: 300_000,
}, async () => {
  const { ask, count, waiting, background } = await asking();
  // Nothing is found for this test: what was given up answers with null.
  const given: ((answer: null) => void)[] = [];
  background.ponder = (() => new Promise<null>((resolve) => given.push(resolve))) as never;
  const giveUp = async () => {
    given.shift()!(null);
    await new Promise((resolve) => setImmediate(resolve));
  };
  for (const quantity of [1, 2, 3]) expect((await ask(quantity)).isLooking, `${quantity}`).toBe(true);
  expect(given).toHaveLength(1);
  await giveUp();
  // 1 was given up and is not begun again, 3 is looked for, 2 is once it is asked again.
  expect(given).toHaveLength(1);
  expect((await ask(1)).isLooking).toBe(false);
  expect((await ask(2)).isLooking).toBe(true);
  await giveUp();
  await giveUp();
  expect(given).toHaveLength(0);
  expect([await ask(2), await ask(3)]).toMatchObject([{ isLooking: false }, { isLooking: false }]);
  expect([count('quote'), waiting.length]).toEqual([3, 0]);
});

test('the page asks by itself until the longer search is over, and shows what it found', {
  timeout: 300_000,
}, async () => {
  const { context, background, goOn } = await asking();
  const { database, now } = context;
  const app = createApp({ database, now: () => now, background });
  const part = { headers: { 'HX-Request-Type': 'partial' } };
  const question = `/?${new URLSearchParams({ what: `kit:${what}`, number: '1' })}`;
  const first = await (await app.request(question)).text();
  expect(first).toContain('A sooner day is still looked for.');
  expect(first).toMatch(/data-hx-get="[^"]*still=yes"[^>]*data-hx-trigger="every 2s"/);
  const line = new URLSearchParams({ what0: `kit:${what}`, quantity0: '1', still: 'yes' });
  const soFar = () => app.request('/orders/ready', { ...part, method: 'POST', body: new URLSearchParams(line) });
  expect((await app.request(`${question}&still=yes`, part)).status).toBe(204);
  expect((await soFar()).status).toBe(204);
  await goOn();
  const found = await app.request(`${question}&still=yes`, part);
  expect(found.status).toBe(200);
  const [shown, typed] = [await found.text(), await (await soFar()).text()];
  expect(shown).toContain('17 Apr');
  expect(typed).toContain('17 Apr');
  expect(shown + typed).not.toContain('still');
});

test('a longer search that fails is over: nobody waits for it for good, and the first answer stands', async () => {
  const { background, context, ask } = await asking();
  let [asked, failed] = [0, () => {}];
  const ponder: Compute = () =>
    new Promise((_resolve, reject) => {
      asked += 1;
      failed = () => reject(new Error('The thread is gone.'));
    });
  Object.assign(context, { background: { ...background, ponder } });
  const first = await ask();
  expect(first.isLooking).toBe(true);
  failed();
  await new Promise((resolve) => setImmediate(resolve));
  expect(await ask()).toEqual({ ...first, isLooking: false });
  expect(asked).toBe(1);
});
