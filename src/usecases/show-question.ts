import { answerFor } from './ask-when.ts';
import { today, type UseCaseContext } from './context.ts';
import { currentPlan } from './make-plan.ts';
import { lineOf, offersOf } from './order-contents.ts';

/**
 * What can be asked for, what is chosen (the first thing on offer unless something is named), and when that many of it
 * could be ready: no answer when the choice or the number can't be read.
 */
export const showQuestion = async (
  context: UseCaseContext,
  { what, quantity, withLimits }: { what: string | null; quantity: number | null; withLimits: boolean },
) => {
  const { yard } = await currentPlan(context);
  const offers = offersOf(yard);
  const chosen = what ?? offers[0]?.what ?? '';
  const line = quantity === null ? null : lineOf(chosen, quantity);
  return {
    yardName: yard.yard.name,
    today: today(yard.yard.timeZone, context.now),
    offers,
    what: chosen,
    answer: line && answerFor(yard, [{ row: 0, line }], { withLimits }),
  };
};
