import type { YardFile } from '../../shared/yard-file.ts';
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

/** How long a customer on the phone waits. */
export const quoteRows = (): Row[] => [
  quoteRow('example yard', exampleYard(), 15, 'under 50 ms'),
  quoteRow('typical yard, about 12 orders', randomYard(1002, 'typical'), 15, 'under 50 ms'),
  quoteRow('120 orders', scaledYard(120, 24), 5, 'under 500 ms'),
  {
    what: 'all limits of one quote, example yard',
    figure: ms(median(timed(3, 1, () => limitsOf(exampleYard(), asked(exampleYard()))))),
    aim: 'under 2 s',
  },
];
