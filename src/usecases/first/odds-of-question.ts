import type { Order } from '../../../shared/order.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { goodsOfLines } from '../../engine/book/goods.ts';
import type { DateOdds } from '../../engine/odds/date-odds.ts';
import { type Spare, sparesFor } from '../../engine/odds/spares.ts';
import { withAsked } from '../../engine/quote/present.ts';
import type { Quoted } from '../../engine/quote/quote.ts';
import { computeWithoutThread } from '../core/computations.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { type DayKept, dayKept, type OddsFacts, oddsFacts } from '../orders/odds-facts.ts';
import { type ContentsLine, contentsOf, offersOf } from '../orders/order-contents.ts';
import { lineFaults } from '../orders/order-draft.ts';
import { answerKept } from '../plan/kept-answers.ts';
import { sparesByOf } from '../plan/kept-ready.ts';
import { type PlanToAsk, planToAsk } from '../plan/plan-to-ask.ts';
import { showMeasures } from '../typed/measures.ts';
import { offeredIn, orderAskedAbout, type ReadyFacts } from './ask-when.ts';
import { linesAsked, type RowAsked } from './question-lines.ts';

/** What the day offered goes by: its odds, or time in hand. */
type OfferedBy = Pick<ReadyFacts, 'promiseOn' | 'promiseOdds' | 'sessionsInHand' | 'deliveryDaysInHand'>;

/** How sure the day of what is asked about is. */
export interface QuestionOdds extends PageHead {
  /** What was asked for, in the yard's words; null when there is no such thing, or no number of it. */
  asked: readonly ContentsLine[] | null;
  /** Null where it cannot be made, and where it took too long to find out. */
  odds: OddsFacts | null;
  /** The day that is offered, as the question has it, and in how many courses it is kept; null where there is none. */
  offered: (DayKept & OfferedBy) | null;
  /** Pieces to spare that the plan would have for it; none where the yard has none planned. */
  spares: readonly (Spare & { name: string })[];
}

/** The odds of the day that is offered: those that it goes by, or else by the plan that it goes by. */
const oddsAskedFor = async (
  context: UseCaseContext,
  { yard }: PlanToAsk,
  order: Order,
  { odds, goesBy }: Quoted,
): Promise<DateOdds | null> => {
  if (odds || !goesBy) return odds;
  const compute = context.background?.compute ?? computeWithoutThread;
  const question = { yard: withAsked(yard, order), order: order.id, record: yard.record, ...goesBy };
  return (await compute('date odds', question))?.odds ?? null;
};

const offeredOf = (odds: DateOdds, ready: OfferedBy & Pick<ReadyFacts, 'earliestOn'>): QuestionOdds['offered'] => {
  const { promiseOn, promiseOdds, sessionsInHand, deliveryDaysInHand } = ready;
  const on = promiseOn ?? ready.earliestOn;
  return on === null ? null : { ...dayKept(odds, on), promiseOn, promiseOdds, sessionsInHand, deliveryDaysInHand };
};

const sparesAskedFor = async (
  { database }: UseCaseContext,
  yard: YardFile,
  { lines }: Order,
): Promise<QuestionOdds['spares']> => {
  const record = await database.read((tx) => sparesByOf(tx, yard));
  if (!record) return [];
  return sparesFor([...goodsOfLines(lines, yard).pieces], record).map((spare) => ({
    ...{ ...spare, name: yard.castings.find(({ id }) => id === spare.casting)?.name ?? spare.casting },
  }));
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
  if (!lines || lineFaults(lines, yard).length > 0)
    return { ...about, asked: null, odds: null, offered: null, spares: [] };
  const order = orderAskedAbout(yard, lines);
  const { quoted } = await answerKept(context, current, order, { withLimits: false });
  const odds = await oddsAskedFor(context, current, order, quoted);
  const { system } = await showMeasures(context);
  const asked = contentsOf(
    lines.map(({ line }) => line),
    offersOf(yard, system),
  );
  return {
    ...{ ...about, asked },
    odds: odds && oddsFacts(odds, wantedOn),
    offered: odds && offeredOf(odds, offeredIn(yard, quoted)),
    spares: await sparesAskedFor(context, yard, order),
  };
};
