import type { Order } from '../../../shared/order.ts';
import { readOrderFor } from '../../../shared/order-file.ts';
import { type PromiseOdds, USUAL_ODDS } from '../../../shared/promise-odds.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { beliefsOf } from '../../engine/odds/beliefs.ts';
import type { Quoted } from '../../engine/quote/quote.ts';
import { done, type Outcome, type UseCaseContext } from '../core/context.ts';
import { lineFaults } from '../orders/order-draft.ts';
import { ASKED, answerKept } from '../plan/kept-answers.ts';
import { type PlanToAsk, planToAsk } from '../plan/plan-to-ask.ts';
import { reasonShown } from '../plan/reason-shown.ts';
import { showMeasures } from '../typed/measures.ts';
import type { OrderDraft } from '../typed/order-form.ts';
import { type HeldUpBy, heldUpBy } from './held-up-by.ts';

/** The answer to "when could it be ready?": days of hand-over, all null with a reason when it can't be made. */
export interface ReadyFacts {
  earliestOn: string | null;
  /** No plan has it on an earlier day than `earliestOn`; false where that is not known. */
  isProven: boolean;
  /**
   * The first day that holds with the yard's odds; where its record is not enough, or no day does, with the time in hand that it
   * keeps for mishaps and for late deliveries, null where it has none left.
   */
  promiseOn: string | null;
  /** The odds that `promiseOn` holds with; null where it goes by time in hand. */
  promiseOdds: PromiseOdds | null;
  /** What is on record to promise by, and whether that is enough. */
  record: { pieces: number; sessions: number; isEnough: boolean };
  /** Sessions that the yard keeps in hand before a date it promises. */
  sessionsInHand: number;
  /** Days by which deliveries may be late. */
  deliveryDaysInHand: number;
  /** If it went before all others. */
  ifFirstOn: string | null;
  /** Why it can't be made, in the yard's units. */
  reason: string | null;
  /** What holds the date; null when nothing does that was tried, or when it was not asked. */
  hold: HeldUpBy | null;
  /** A sooner day is still looked for, which takes some seconds: asked again then, the answer may be another. */
  isLooking: boolean;
  /** Each thing that would bring the date forward; null when it was not asked, which is much quicker. */
  limits: readonly { change: string; earliestOn: string; daysSooner: number }[] | null;
}

/** The order that a question without faults is about; `notBefore` is the day before which nothing may be poured for it. */
export const orderAskedAbout = (yard: YardFile, lines: OrderDraft['lines'], notBefore: string | null = null): Order => {
  const from = notBefore === null ? {} : { notBefore };
  const read = readOrderFor(yard, { id: ASKED, ...from, lines: lines.map(({ line }) => line) });
  if (!read.ok) throw new Error(`A question had faults at ${read.faults.map(({ path }) => path).join(', ')}.`);
  return read.order;
};

interface AskingHow {
  withLimits?: boolean;
  /** The units that the answer is put in. */
  system?: UnitSystem;
  /** The day before which nothing may be poured for it. */
  notBefore?: string | null;
}

/** The day that an answer offers, the soonest one, and what it goes by. */
export const offeredIn = ({ yard }: YardFile, { quote, odds }: Quoted) => {
  const { sessionsInHand, deliveryDaysInHand, promiseOdds = USUAL_ODDS } = yard;
  const { earliestOn, promiseOn } = quote;
  return { earliestOn, promiseOn, promiseOdds: odds ? promiseOdds : null, sessionsInHand, deliveryDaysInHand };
};

/** When an order of these lines could be ready beside everything a yard has promised and, if asked, what holds that date. */
export const answerFor = async (
  context: UseCaseContext,
  current: PlanToAsk,
  lines: OrderDraft['lines'],
  { withLimits = false, system = 'metric', notBefore = null }: AskingHow = {},
): Promise<Outcome<ReadyFacts>> => {
  const { yard } = current;
  const faults = lineFaults(lines, yard);
  if (faults.length > 0) return { ok: false, faults };
  const order = orderAskedAbout(yard, lines, notBefore);
  const { quoted, isLooking } = await answerKept(context, current, order, { withLimits });
  const { ifFirstOn, proven: isProven, reason = null, limits } = quoted.quote;
  const hold = heldUpBy(yard, limits);
  const why = reasonShown(reason, yard.materials, system);
  const dates = { ...offeredIn(yard, quoted), isProven, ifFirstOn };
  const { restsOn, isEnough } = beliefsOf(yard.record);
  const record = { pieces: restsOn.pieces, sessions: restsOn.sessions, isEnough };
  return done({ ...dates, record, isLooking, reason: why, hold, limits: withLimits ? limits : null });
};

/** The same, asked and not taken: nothing is written down. */
export const askWhen = async (
  context: UseCaseContext,
  lines: OrderDraft['lines'],
  notBefore: string | null = null,
): Promise<Outcome<ReadyFacts>> =>
  answerFor(context, await planToAsk(context), lines, {
    notBefore,
    system: (await showMeasures(context)).system,
  });
