import { guessesOfYard } from '../../../db/stores/figure-store.ts';
import { computeWithoutThread } from '../core/computations.ts';
import { type Outcome, today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { withinTime } from '../core/within-time.ts';
import { type ContentsLine, contentsOf, type Offer, offersOf } from '../orders/order-contents.ts';
import type { CurrentPlan } from '../plan/make-plan.ts';
import { planToAsk } from '../plan/plan-to-ask.ts';
import { type Guessed, restsOn } from '../plan/rests-on.ts';
import { showMeasures } from '../typed/measures.ts';
import type { OrderDraft } from '../typed/order-form.ts';
import { answerFor, orderAskedAbout, type ReadyFacts } from './ask-when.ts';
import { type ChosenDate, chosenFromDates, whatItPushes } from './chosen-date.ts';
import { linesAsked, type RowAsked } from './question-lines.ts';
import { type SessionAhead, sessionsAhead } from './sessions-ahead.ts';

export interface QuestionAsked {
  /** `what` is null where nothing was chosen yet: the first thing on offer is asked about. */
  rows: readonly (Omit<RowAsked, 'what'> & { what: string | null })[];
  /** A day the customer would like, where one is named. */
  wantedOn: string | null;
  /** Whether to find out what holds the date, which takes longest. */
  withLimits: boolean;
  /** Whether to find out what a day that is earlier would push, which takes longer too. */
  withPushes: boolean;
  /** So long is waited for the answer, which then is still to come; left out: until it is there. */
  patienceMs?: number;
}

/** A question of the first page, and what came of it. */
export interface QuestionModel extends PageHead {
  offers: readonly Offer[];
  /** What is chosen, row by row; '' where nothing is on offer. */
  rows: readonly RowAsked[];
  /** The same in the yard's words; none where it cannot be read. */
  contents: readonly ContentsLine[];
  /** Null where the choice or the number can't be read. */
  answer: Outcome<ReadyFacts> | null;
  /** The answer takes longer than was waited for: asked again, it is there once it was worked out. */
  isComing: boolean;
  /** What of it is still guessed. */
  restsOn: readonly Guessed[];
  /** What comes of the day that is wanted; null where none is named, or there is no answer. */
  chosen: ChosenDate | null;
  /** The sessions up to the last of the dates that the answer speaks of; none where there is none. */
  sessions: readonly SessionAhead[];
}

/** What comes of the day that is wanted; null when none is, or when there is no answer to begin with. */
const chosenFor = async (
  { background, now }: UseCaseContext,
  current: CurrentPlan,
  lines: OrderDraft['lines'],
  facts: ReadyFacts,
  { wantedOn, withPushes }: QuestionAsked,
): Promise<ChosenDate | null> => {
  if (wantedOn === null) return null;
  const { yard, memory } = current;
  const choosing = { on: wantedOn, today: today(yard.yard.timeZone, now), facts };
  const plain = chosenFromDates(choosing);
  if (plain) return plain;
  if (!withPushes) return { on: wantedOn, answer: 'not asked yet' };
  const order = orderAskedAbout(yard, lines);
  return whatItPushes(
    { ...choosing, yard, order, ...(memory ? { memory } : {}) },
    background?.compute ?? computeWithoutThread,
  );
};

/** The last of the dates that the answer speaks of; null where it names none. */
const lastDate = ({ earliestOn, promiseOn }: ReadyFacts, wantedOn: string | null): string | null =>
  earliestOn === null ? null : [earliestOn, promiseOn ?? '', wantedOn ?? ''].sort().at(-1)!;

/**
 * What can be asked for, what is chosen (the first thing on offer unless something is named), and when that many of it
 * could be ready: no answer when a choice or a number can't be read.
 */
export const showQuestion = async (context: UseCaseContext, asked: QuestionAsked): Promise<QuestionModel> => {
  const current = await planToAsk(context);
  const { yard, plan } = current;
  const { withLimits, wantedOn, patienceMs } = asked;
  const { system } = await showMeasures(context);
  const offers = offersOf(yard, system);
  const rows = asked.rows.map(({ what, quantity }) => ({ what: what ?? offers[0]?.what ?? '', quantity }));
  const lines = linesAsked(rows);
  const wanted = lines?.map(({ line }) => line) ?? [];
  const answering = lines && answerFor(context, current, lines, { withLimits, system });
  const answer = answering && (await withinTime(answering, patienceMs));
  const guesses = await context.database.read(guessesOfYard);
  const facts = lines && answer?.ok ? { lines, ready: answer.value } : null;
  const until = facts && lastDate(facts.ready, wantedOn);
  return {
    yardName: yard.yard.name,
    today: today(yard.yard.timeZone, context.now),
    restsOn: facts ? restsOn(yard, wanted, guesses) : [],
    offers,
    rows,
    contents: contentsOf(wanted, offers),
    answer,
    isComing: answering !== null && answer === null,
    chosen: facts && (await chosenFor(context, current, facts.lines, facts.ready, asked)),
    sessions: until ? sessionsAhead(plan, yard, until) : [],
  };
};
