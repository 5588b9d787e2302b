import { guessesOfYard } from '../../../db/stores/figure-store.ts';
import type { OrderLine } from '../../../shared/order.ts';
import { computeWithoutThread } from '../core/computations.ts';
import { type Outcome, today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { type Offer, offersOf } from '../orders/order-contents.ts';
import type { CurrentPlan } from '../plan/make-plan.ts';
import { planToAsk } from '../plan/plan-to-ask.ts';
import { type Guessed, restsOn } from '../plan/rests-on.ts';
import { showMeasures } from '../typed/measures.ts';
import { lineOf } from '../typed/what-ordered.ts';
import { answerFor, orderAskedAbout, type ReadyFacts } from './ask-when.ts';
import { type ChosenDate, chosenFromDates, whatItPushes } from './chosen-date.ts';

export interface QuestionAsked {
  what: string | null;
  quantity: number | null;
  /** A day the customer would like, where one is named. */
  wantedOn: string | null;
  /** Whether to find out what takes longer: what holds the date, and what an earlier one would push. */
  withLimits: boolean;
}

/** A question of the first page, and what came of it. */
export interface QuestionModel extends PageHead {
  offers: readonly Offer[];
  /** What is chosen; '' where nothing is on offer. */
  what: string;
  /** Null where the choice or the number can't be read. */
  answer: Outcome<ReadyFacts> | null;
  /** What of it is still guessed. */
  restsOn: readonly Guessed[];
  /** What comes of the day that is wanted; null where none is named, or there is no answer. */
  chosen: ChosenDate | null;
}

/** What comes of the day that is wanted; null when none is, or when there is no answer to begin with. */
const chosenFor = async (
  { background, now }: UseCaseContext,
  current: CurrentPlan,
  line: OrderLine,
  facts: ReadyFacts,
  { wantedOn, withLimits }: QuestionAsked,
): Promise<ChosenDate | null> => {
  if (wantedOn === null) return null;
  const { yard, memory } = current;
  const choosing = { on: wantedOn, today: today(yard.yard.timeZone, now), facts };
  const plain = chosenFromDates(choosing);
  if (plain) return plain;
  if (!withLimits) return { on: wantedOn, answer: 'not asked yet' };
  const order = orderAskedAbout(yard, [{ row: 0, line }]);
  return whatItPushes(
    { ...choosing, yard, order, ...(memory ? { memory } : {}) },
    background?.compute ?? computeWithoutThread,
  );
};

/**
 * What can be asked for, what is chosen (the first thing on offer unless something is named), and when that many of it
 * could be ready: no answer when the choice or the number can't be read.
 */
export const showQuestion = async (context: UseCaseContext, asked: QuestionAsked): Promise<QuestionModel> => {
  const current = await planToAsk(context);
  const { yard } = current;
  const { what, quantity, withLimits } = asked;
  const { system } = await showMeasures(context);
  const offers = offersOf(yard, system);
  const chosen = what ?? offers[0]?.what ?? '';
  const line = quantity === null ? null : lineOf(chosen, quantity);
  const answer = line && (await answerFor(context, current, [{ row: 0, line }], { withLimits, system }));
  const guesses = await context.database.read(guessesOfYard);
  return {
    yardName: yard.yard.name,
    today: today(yard.yard.timeZone, context.now),
    restsOn: line && answer?.ok ? restsOn(yard, [line], guesses) : [],
    offers,
    what: chosen,
    answer,
    chosen: line && answer?.ok ? await chosenFor(context, current, line, answer.value, asked) : null,
  };
};
