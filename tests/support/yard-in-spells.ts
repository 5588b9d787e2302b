import type { YardFile } from '../../shared/yard-file.ts';
import { smallYard } from './small-yard.ts';

/**
 * Three pairs, whose six panels are there with one more, take 6 hours to pack, and Saturdays have 4: all of 10 April, and
 * the last 2 hours of the 17th.
 */
export const yardInSpells = (): YardFile =>
  smallYard({
    kits: smallYard().kits.map((kit) => ({ ...kit, packMinutes: 120 })),
    finished: [{ casting: 'panel-900', count: 7 }],
    orders: [{ id: '27-001', customer: 'School garden', due: '2027-04-24', lines: [{ kit: 'pair', quantity: 3 }] }],
  });
