import type { Order } from '../../../shared/order.ts';
import type { DateOdds } from '../../engine/odds/date-odds.ts';
import { withAsked } from '../../engine/quote/present.ts';
import { computeWithoutThread } from '../core/computations.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { type OddsFacts, oddsFacts } from '../orders/odds-facts.ts';
import { type ContentsLine, contentsOf, offersOf } from '../orders/order-contents.ts';
import { lineFaults } from '../orders/order-draft.ts';
import { answerKept } from '../plan/kept-answers.ts';
import { type PlanToAsk, planToAsk } from '../plan/plan-to-ask.ts';
import { showMeasures } from '../typed/measures.ts';
import { orderAskedAbout } from './ask-when.ts';
import { linesAsked, type RowAsked } from './question-lines.ts';

/** How sure the day of what is asked about is. */
export interface QuestionOdds extends PageHead {
  /** What was asked for, in the yard's words; null when there is no such thing, or no number of it. */
  asked: readonly ContentsLine[] | null;
  /** Null where it cannot be made, and where it took too long to find out. */
  odds: OddsFacts | null;
}

/** The odds of the day that is offered: those that it goes by, or else by the plan that it goes by. */
const oddsAskedFor = async (context: UseCaseContext, current: PlanToAsk, order: Order): Promise<DateOdds | null> => {
  const { quoted } = await answerKept(context, current, order, { withLimits: false });
  if (quoted.odds || !quoted.goesBy) return quoted.odds;
  const { yard } = current;
  const compute = context.background?.compute ?? computeWithoutThread;
  const question = { yard: withAsked(yard, order), order: order.id, record: yard.record, ...quoted.goesBy };
  return (await compute('date odds', question))?.odds ?? null;
};

/** How sure the day is that is told for what is asked about, and the day that the customer would like. */
export const oddsOfQuestion = async (
  context: UseCaseContext,
  rows: readonly RowAsked[],
  wantedOn: string | null,
): Promise<QuestionOdds> => {
  const current = await planToAsk(context);
  const { yard } = current;
  const about = { yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now) };
  const lines = linesAsked(rows);
  if (!lines || lineFaults(lines, yard).length > 0) return { ...about, asked: null, odds: null };
  const odds = await oddsAskedFor(context, current, orderAskedAbout(yard, lines));
  const { system } = await showMeasures(context);
  const asked = contentsOf(
    lines.map(({ line }) => line),
    offersOf(yard, system),
  );
  return { ...about, asked, odds: odds && oddsFacts(odds, wantedOn) };
};
