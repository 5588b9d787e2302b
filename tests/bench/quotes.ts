import type { YardFile } from '../../shared/yard-file.ts';
import { planWithMemory } from '../../src/engine/plan.ts';
import { limitsOf } from '../../src/engine/quote/limits.ts';
import { quoteOrder } from '../../src/engine/quote/quote.ts';
import { randomYard } from '../support/random-yard.ts';
import { scaledYard } from '../support/scaled-yard.ts';
import { exampleYard } from './speed.ts';
import { median, ms, type Row, timed } from './table.ts';

const asked = (yard: YardFile) => ({ id: 'asked', weight: 1, lines: [{ kit: yard.kits[0]!.id, quantity: 1 }] });

const quoteRow = (what: string, yard: YardFile, runs: number, aim: string): Row => ({
  what: `quote, ${what}`,
  figure: ms(median(timed(runs, 3, () => quoteOrder(yard, asked(yard))))),
  aim,
});

/** One quote on each of twenty yards of 8 to 15 orders, asked before once each; pages ask beside the plan they have. */
const typicalRow = (besidePlan: boolean): Row => {
  const times = Array.from({ length: 20 }, (_, i) => {
    const yard = randomYard(1001 + i, 'typical');
    const from = besidePlan ? { memory: planWithMemory(yard, { effort: 'quick' }).memory } : {};
    return timed(1, 1, () => quoteOrder(yard, asked(yard), from))[0]!;
  });
  const worst = Math.max(...times);
  return {
    what: `quote, twenty yards of 8 to 15 orders${besidePlan ? ', beside the stored plan' : ''}`,
    figure: `${ms(median(times))}, at worst ${ms(worst)}`,
    aim: 'under 50 ms',
  };
};

/** How long a customer on the phone waits. */
export const quoteRows = (): Row[] => [
  quoteRow('example yard', exampleYard(), 15, 'under 50 ms'),
  typicalRow(false),
  typicalRow(true),
  quoteRow('120 orders', scaledYard(120, 24), 5, 'under 500 ms'),
  {
    what: 'all limits of one quote, example yard',
    figure: ms(median(timed(3, 1, () => limitsOf(exampleYard(), asked(exampleYard()))))),
    aim: 'under 2 s',
  },
];
