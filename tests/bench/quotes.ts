import type { YardFile } from '../../shared/yard-file.ts';
import { planWithMemory } from '../../src/engine/plan.ts';
import { limitsOf } from '../../src/engine/quote/limits.ts';
import { type QuoteOptions, quoteOrder } from '../../src/engine/quote/quote.ts';
import { keepOfPlan } from '../../src/engine/standing/keep-of-plan.ts';
import { randomYard } from '../support/random-yard.ts';
import { scaledYard } from '../support/scaled-yard.ts';
import { exampleYard } from './speed.ts';
import { median, ms, type Row, timed } from './table.ts';

const asked = (yard: YardFile) => ({ id: 'asked', weight: 1, lines: [{ kit: yard.kits[0]!.id, quantity: 1 }] });

/** What is known of the plan that stands: nothing, how it was come by, or all of it, as pages ask. */
type Beside = 'nothing' | 'its memory' | 'the standing plan';

const besideOf = (yard: YardFile, beside: Beside): QuoteOptions => {
  if (beside === 'nothing') return {};
  const { plan, memory } = planWithMemory(yard, { effort: 'quick' });
  return beside === 'its memory' ? { memory } : { memory, standing: keepOfPlan(plan), near: plan };
};

const textOf = (beside: Beside): string => (beside === 'nothing' ? '' : `, beside ${beside}`);

const quoteRow = (what: string, yard: YardFile, runs: number, aim: string, beside: Beside = 'nothing'): Row => {
  const from = besideOf(yard, beside);
  return {
    what: `quote, ${what}${textOf(beside)}`,
    figure: ms(median(timed(runs, 3, () => quoteOrder(yard, asked(yard), from)))),
    aim,
  };
};

/** One quote on each of twenty yards of 8 to 15 orders, asked before once each. */
const typicalRow = (beside: Beside): Row => {
  const times = Array.from({ length: 20 }, (_, i) => {
    const yard = randomYard(1001 + i, 'typical');
    const from = besideOf(yard, beside);
    return timed(1, 1, () => quoteOrder(yard, asked(yard), from))[0]!;
  });
  const worst = Math.max(...times);
  return {
    what: `quote, twenty yards of 8 to 15 orders${textOf(beside)}`,
    figure: `${ms(median(times))}, at worst ${ms(worst)}`,
    aim: 'under 50 ms',
  };
};

/** How long a customer on the phone waits. */
export const quoteRows = (): Row[] => [
  quoteRow('example yard', exampleYard(), 15, 'under 50 ms'),
  quoteRow('example yard', exampleYard(), 15, 'under 50 ms', 'the standing plan'),
  typicalRow('nothing'),
  typicalRow('its memory'),
  typicalRow('the standing plan'),
  quoteRow('120 orders', scaledYard(120, 24), 5, 'under 500 ms'),
  quoteRow('120 orders', scaledYard(120, 24), 5, 'under 300 ms', 'the standing plan'),
  {
    what: 'all limits of one quote, example yard',
    figure: ms(median(timed(3, 1, () => limitsOf(exampleYard(), asked(exampleYard()))))),
    aim: 'under 2 s',
  },
];
