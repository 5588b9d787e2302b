import { planYard } from '../../src/engine/plan.ts';
import { randomYard, YARD_KINDS } from '../support/random-yard.ts';
import { shuffledYard } from '../support/shuffled-yard.ts';
import type { Row } from './table.ts';

/** On how many random yards the score of a normal plan changes where every list of the file is shuffled. */
export const shuffledRows = (yards: number): Row[] => {
  const changed: number[] = [];
  for (let seed = 0; seed < yards; seed++) {
    const yard = randomYard(seed, YARD_KINDS[seed % YARD_KINDS.length]!);
    const [one, other] = [yard, shuffledYard(yard, seed)].map((of) => JSON.stringify(planYard(of).score));
    if (one !== other) changed.push(seed);
  }
  const figure = `${changed.length}${changed.length > 0 ? ` (seeds ${changed.join(', ')})` : ''}`;
  return [
    { what: `scores that change with the order of a file's lists, of ${yards} yards, normal`, figure, aim: 'none' },
  ];
};
