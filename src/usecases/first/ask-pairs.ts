import type { QuoteLimit } from '../../../shared/quote.ts';
import { computeWithoutThread } from '../core/computations.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { type ContentsLine, contentsOf, offersOf } from '../orders/order-contents.ts';
import { lineFaults } from '../orders/order-draft.ts';
import { planToAsk } from '../plan/plan-to-ask.ts';
import { showMeasures } from '../typed/measures.ts';
import { orderAskedAbout } from './ask-when.ts';
import { linesAsked, type RowAsked } from './question-lines.ts';

/** What two changes at once would bring for what was asked. */
export interface PairsAsked extends PageHead {
  /** What was asked for, in the yard's words; null when there is no such thing, or no number of it. */
  asked: readonly ContentsLine[] | null;
  /** What two changes at once would bring, largest gain first; null when it took too long to find out. */
  pairs: Pick<QuoteLimit, 'change' | 'earliestOn' | 'daysSooner'>[] | null;
}

/** What would bring a date further forward than any one change does: every two of them, tried at once. Takes seconds. */
export const askPairs = async (context: UseCaseContext, rows: readonly RowAsked[]): Promise<PairsAsked> => {
  const { yard, memory } = await planToAsk(context);
  const about = { yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now) };
  const lines = linesAsked(rows);
  if (!lines || lineFaults(lines, yard).length > 0) return { ...about, asked: null, pairs: [] };
  const compute = context.background?.compute ?? computeWithoutThread;
  const question = { yard, order: orderAskedAbout(yard, lines), ...(memory ? { memory } : {}) };
  const { system } = await showMeasures(context);
  const asked = contentsOf(
    lines.map(({ line }) => line),
    offersOf(yard, system),
  );
  return { ...about, asked, pairs: await compute('two at once', question) };
};
