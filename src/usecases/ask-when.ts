import { readOrderFor } from '../../shared/order-file.ts';
import type { YardFile } from '../../shared/yard-file.ts';
import { quoteOrder } from '../engine/quote/quote.ts';
import { done, type Outcome, type UseCaseContext } from './context.ts';
import { currentPlan } from './make-plan.ts';
import { mouldsThatHold } from './moulds-that-hold.ts';
import { lineFaults, type OrderDraft } from './order-draft.ts';

/** An id that no order of a yard has: orders are numbered by year. */
const ASKED = 'asked about';

export interface Asked {
  earliestOn: string | null;
  promiseOn: string | null;
  ifFirstOn: string | null;
  reason: string | null;
  hold: ReturnType<typeof mouldsThatHold>;
}

/** When an order of these lines could be ready beside everything a yard has promised. */
export const answerFor = (yard: YardFile, lines: OrderDraft['lines']): Outcome<Asked> => {
  const faults = lineFaults(lines, yard);
  if (faults.length > 0) return { ok: false, faults };
  const read = readOrderFor(yard, { id: ASKED, lines: lines.map(({ line }) => line) });
  if (!read.ok) throw new Error(`A question had faults: ${read.faults.map(({ message }) => message).join('; ')}`);
  const { earliestOn, promiseOn, ifFirstOn, reason = null, ...quote } = quoteOrder(yard, read.order);
  const hold = mouldsThatHold(yard, read.order, { ...quote, earliestOn, promiseOn, ifFirstOn });
  return done({ earliestOn, promiseOn, ifFirstOn, reason, hold });
};

/** The same, asked and not taken: nothing is written down. */
export const askWhen = async (context: UseCaseContext, lines: OrderDraft['lines']): Promise<Outcome<Asked>> =>
  answerFor((await currentPlan(context)).yard, lines);
