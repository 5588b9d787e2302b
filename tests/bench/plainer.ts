import { dateOfDay, dayNumber } from '../../shared/time.ts';
import { planWithMemory } from '../../src/engine/plan.ts';
import { quoteOrder } from '../../src/engine/quote/quote.ts';
import { keepOfPlan } from '../../src/engine/standing/keep-of-plan.ts';
import { askingYard } from '../support/asking-yard.ts';
import { YARD_KINDS } from '../support/random-yard.ts';
import { type Beside, fromNothing, keptWhole, oneMoved } from './plainer-plans.ts';
import type { Row } from './table.ts';

/** A plainer way to find a day for an order, and on how many yards it was the sooner one. */
interface Plainer {
  what: string;
  day: (beside: Beside, told: string | null) => string | null;
}

const dayBefore = (told: string | null): string | undefined =>
  told === null ? undefined : dateOfDay(dayNumber(told) - 1);

const WAYS: Plainer[] = [
  { what: 'all that is planned kept', day: (beside) => keptWhole(beside) },
  { what: 'all kept but one other order', day: oneMoved },
  { what: 'from nothing', day: (beside, told) => fromNothing(beside, [undefined, told ?? undefined, dayBefore(told)]) },
];

/**
 * `npm run bench -- plainer [yards] [from]`: random yards of all kinds, an order asked about beside a quick plan; on how many a
 * plainer plan has it sooner, nobody later.
 */
export const plainerRows = (yards: number, from: number): Row[] => {
  const sooner = WAYS.map((): string[] => []);
  let asked = 0;
  for (let seed = from; seed < from + yards; seed++) {
    const asking = askingYard(seed, YARD_KINDS[seed % YARD_KINDS.length]!);
    if (!asking) continue;
    asked++;
    const { yard, order } = asking;
    const { plan, memory } = planWithMemory(yard, { effort: 'quick' });
    const { earliestOn: told } = quoteOrder(yard, order, { memory, standing: keepOfPlan(plan) });
    for (const [i, { day }] of WAYS.entries()) {
      const plainer = day({ yard, order, plan }, told);
      if (plainer !== null && (told === null || plainer < told)) sooner[i]!.push(`${seed}: ${plainer} for ${told}`);
    }
  }
  return WAYS.map(({ what }, i) => ({
    what: `sooner than the answer with ${what}, of ${asked} yards`,
    figure: `${sooner[i]!.length}${sooner[i]!.length > 0 ? ` (${sooner[i]!.join('; ')})` : ''}`,
    aim: 'none',
  }));
};
