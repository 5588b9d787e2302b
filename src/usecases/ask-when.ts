import { readOrderFor } from '../../shared/order-file.ts';
import { quoteOrder } from '../engine/quote/quote.ts';
import { done, type Outcome, today, type UseCaseContext } from './context.ts';
import { currentPlan } from './make-plan.ts';
import { contentsOf, offersOf } from './order-contents.ts';
import { lineFaults, type OrderDraft } from './order-draft.ts';
import { mouldsThatHold } from './moulds-that-hold.ts';

/** An id that no order of a yard has: orders are numbered by year. */
const ASKED = 'asked about';

/** When an order of these lines could be ready, asked and not taken. Nothing is written down. */
export const askWhen = async (context: UseCaseContext, lines: OrderDraft['lines']) => {
  const { yard } = await currentPlan(context);
  const faults = lineFaults(lines, yard);
  const about = {
    yardName: yard.yard.name,
    today: today(yard.yard.timeZone, context.now),
    offers: offersOf(yard),
  };
  if (faults.length > 0) return { ...about, answer: { ok: false, faults } satisfies Outcome<never> };
  const order = readOrderFor(yard, { id: ASKED, lines: lines.map(({ line }) => line) });
  if (!order.ok) throw new Error(`A question had faults: ${order.faults.map(({ message }) => message).join('; ')}`);
  const quote = quoteOrder(yard, order.order);
  const asked = {
    contents: contentsOf(order.order.lines, about.offers),
    ...quote,
    reason: quote.reason ?? null,
    hold: mouldsThatHold(yard, order.order, quote),
  };
  return { ...about, answer: done(asked) };
};
