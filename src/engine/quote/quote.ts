import type { Order } from '../../../shared/order.ts';
import type { Keep, PlanFile } from '../../../shared/plan.ts';
import type { Quote } from '../../../shared/quote.ts';
import { dateOfDay } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { soonestComplete } from '../bound/soonest.ts';
import { canonicalYard } from '../canonical-yard.ts';
import { compile, keeping } from '../decoder/compile.ts';
import { NEVER, type Problem } from '../decoder/problem.ts';
import { settle } from '../decoder/settle.ts';
import { dayByOdds, oddsInQuote, oddsToPromise, type PlanOfAnswer, planOfAnswer } from '../odds/answer-odds.ts';
import type { DateOdds } from '../odds/date-odds.ts';
import type { PlanMemory } from '../search/memory.ts';
import type { Answer } from './answer.ts';
import { type Asked, carefulAnswer } from './careful.ts';
import { earliestOf } from './earliest.ts';
import { exactlyBefore } from './exactly.ts';
import { completesIfFirst } from './if-first.ts';
import { completesIfLate } from './late-deliveries.ts';
import { limitPairsOf, limitsOver } from './limits.ts';
import { type FoundLonger, foundByLonger, longerIn } from './longer.ts';
import { type Asking, askingIn, dealtAs, measuredBy, type Present, presentIn, withOrderAt } from './present.ts';
import { handoverOn } from './promise.ts';
import { mayLookLonger } from './towards.ts';

/** Places in the sequence that are tried for the new order; in a longer sequence every second, third … one is. */
export const MOST_PLACES = 40;

/** The answer with every pour of the plan that stands kept, and what that plan promises the others. */
const roundStanding = (
  without: Problem,
  order: Order,
  standing: Keep,
  { memory, near }: Pick<QuoteOptions, 'memory' | 'near'>,
): Answer => {
  const kept = keeping(without, standing);
  const present = presentIn(kept, memory, near);
  const asking = askingIn(kept, order);
  const round = { ...present, dispatch: dealtAs(asking.state, present.dispatch, near) };
  return { asking, present: round, earliest: earliestOf(asking, round, MOST_PLACES, { anew: false }) };
};

/** A day to promise, null beyond the horizon, the plan that it goes by, and its odds where it goes by them. */
interface Promised {
  day: number | null;
  answer: Answer;
  goesBy: PlanOfAnswer | null;
  odds: DateOdds | null;
}

/** A day with the sessions in hand, if deliveries come late by the days in hand for them, where a plan has it then. */
const dayWithLateDeliveries = (
  yard: YardFile,
  order: Order,
  { asking: { problem }, earliest }: Answer,
  { day, memory }: { day: number | null; memory: PlanMemory | undefined },
): number | null => {
  if (day === null || yard.yard.deliveryDaysInHand === 0) return day;
  const soonEnough = problem.calendar.midnightOf(day + 1) - 1;
  const completesAt = completesIfLate(yard, order, { earliest, soonEnough }, memory);
  return completesAt >= NEVER ? day : Math.max(day, handoverOn(problem, completesAt));
};

/**
 * The day to promise for what is complete by a plan: the first that holds with the yard's odds where there is record enough,
 * and within the horizon; else with its sessions in hand, and its days in hand for deliveries.
 */
const promisedDay = (
  yard: YardFile,
  order: Order,
  asked: Asked,
  { memory, longer }: Pick<QuoteOptions, 'memory' | 'longer'>,
): Promised => {
  const way = longerIn(asked.tried.asking.problem, longer, 'careful');
  const { answer, day } = carefulAnswer(yard, order, asked, way);
  const goesBy = planOfAnswer(answer);
  const odds = oddsToPromise(yard, order, goesBy);
  const byOdds = odds && dayByOdds(yard, odds);
  if (byOdds !== null) return { day: byOdds, answer, goesBy, odds };
  return { day: dayWithLateDeliveries(yard, order, answer, { day, memory }), answer, goesBy, odds: null };
};

/** Why the order cannot be made, for a quote without dates. */
const reasonAgainst = ({ state, added }: Asking, present: Present): string => {
  const refused = settle(state, withOrderAt(present, present.dispatch.sequence.length, added));
  return refused.get(added)?.reason ?? 'the sessions planned have no time for it beside what is promised';
};

/** What a quote is asked for beside its dates, and beside which plan. */
export interface QuoteOptions {
  limits?: boolean;
  /** Also what two things at once would bring; takes seconds. */
  pairs?: boolean;
  /** How the present plan was come by; the question is asked beside that plan. */
  memory?: PlanMemory;
  /** Pours, coats, strips and packings of the plan that stands: the answer is never later than with all of them kept. */
  standing?: Keep;
  /** The plan that stands: its pieces are for whom they were. */
  near?: PlanFile;
  /** Also look for some seconds more, or go by what was found so. */
  longer?: 'look' | FoundLonger;
}

/** An answer, with what only who gives it has to know. */
export interface Quoted {
  quote: Quote;
  /** A longer search may find a sooner day. */
  isOpen: boolean;
  /** What a longer search found that is sooner than without. */
  found: FoundLonger;
  /** The plan that the day to promise goes by; null where there is none. */
  goesBy: PlanOfAnswer | null;
  /** The odds that it goes by; null where it goes by sessions in hand. */
  odds: DateOdds | null;
}

const FOUND_NOTHING: FoundLonger = { earliest: null, careful: null };

/**
 * When an order that is not taken yet could be ready. `earliestOn`: over every place in the sequence, the earliest
 * hand-over day at which no existing order has more days late than without it. `promiseOn` is the first that holds with the
 * yard's odds where its record is enough. Else it adds the yard's sessions in hand, in which a piece can be cast again, and allows
 * for deliveries that are late by the days in hand for them. It leaves the others their sessions in hand. `ifFirstOn`: when it
 * goes before all others, whatever becomes of them. `proven`: the earliest day is one that no plan can beat, by a lower bound
 * (`soonestComplete`) or because all ways were looked through (`exactlyBefore`). `limits`: what holds the date, left empty
 * unless asked for, since each is a quote of its own. The order's `due` and `wanted` play no part.
 */
export const quoteOrder = (asFiled: YardFile, order: Order, options: QuoteOptions = {}): Quote =>
  quoteWithMore(asFiled, order, options).quote;

/** As `quoteOrder`, with whether a longer search may find more, and what it found. */
export const quoteWithMore = (
  asFiled: YardFile,
  order: Order,
  { limits = false, pairs = false, memory, standing, near, longer }: QuoteOptions = {},
): Quoted => {
  const { yard } = canonicalYard(asFiled);
  const without = compile(yard);
  const stood = standing ? roundStanding(without, order, standing, { memory, near }) : null;
  const present = measuredBy(presentIn(without, memory), stood?.present);
  const asking = askingIn(without, order);
  const { problem } = asking;
  const way = longerIn(problem, longer, 'earliest');
  const tried: Answer = { asking, present, earliest: earliestOf(asking, present, MOST_PLACES, { longer: way }) };
  const soonest = stood && stood.earliest.completesAt < tried.earliest.completesAt ? stood : tried;
  const { completesAt: earliest, found, isProven } = exactlyBefore(asking, present, soonest.earliest.completesAt);
  if (earliest >= NEVER) {
    const none = { earliestAt: null, earliestOn: null, promiseOn: null, ifFirstOn: null, proven: false, limits: [] };
    const quote = { ...none, reason: reasonAgainst(asking, present) };
    return { quote, isOpen: false, found: FOUND_NOTHING, goesBy: null, odds: null };
  }
  const exact = found ? { asking, present, earliest: { completesAt: earliest, dispatch: null }, found } : soonest;
  const asked = { tried, stood, earliest: exact };
  const promised = promisedDay(yard, order, asked, { ...(memory && { memory }), ...(longer && { longer }) });
  const day = handoverOn(problem, earliest);
  const proven = isProven || day <= handoverOn(problem, soonestComplete(problem, asking.added));
  const quote: Quote = {
    earliestAt: problem.calendar.instantText(earliest),
    earliestOn: dateOfDay(day),
    promiseOn: promised.day === null ? null : dateOfDay(promised.day),
    ifFirstOn: dateOfDay(handoverOn(problem, Math.min(earliest, completesIfFirst(order, asking)))),
    proven,
    limits: [
      ...(limits ? limitsOver(yard, order, present, day) : []),
      ...(pairs ? limitPairsOf(yard, order, memory) : []),
    ].sort((a, b) => b.daysSooner - a.daysSooner),
    ...(promised.odds && { odds: oddsInQuote(promised.odds) }),
  };
  return {
    quote,
    isOpen: mayLookLonger(problem) && !(proven && promised.answer.earliest.completesAt <= earliest),
    found: {
      earliest: foundByLonger(problem, tried.earliest),
      careful: foundByLonger(problem, promised.answer.earliest),
    },
    goesBy: promised.goesBy,
    odds: promised.odds,
  };
};
