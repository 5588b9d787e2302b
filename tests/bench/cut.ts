import { readFileSync } from 'node:fs';
import { cutPlan } from '../../src/engine/cut/cut-plan.ts';
import { fewestSticks } from '../../src/engine/cut/fewest-sticks.ts';
import { sticksByHighs, sticksCases } from '../support/sticks-by-highs.ts';
import { ms, type Row } from './table.ts';

interface Instance {
  name: string;
  capacity: number;
  best: number;
  items: number[];
}

const sticksOf = ({ capacity, items }: Instance): number => {
  const room = [...new Set(items)].sort((a, b) => b - a);
  const wanted = room.map((size) => items.filter((x) => x === size).length);
  return fewestSticks(room, wanted, capacity).sticks;
};

const publishedRow = (set: string): Row => {
  const file = new URL('../contract/bin-packing.json', import.meta.url);
  const instances: Instance[] = JSON.parse(readFileSync(file, 'utf8'));
  const some = instances.filter((x) => x.name.includes(set));
  let slowest = 0;
  const reached = some.filter((x) => {
    const start = performance.now();
    const sticks = sticksOf(x);
    slowest = Math.max(slowest, performance.now() - start);
    return sticks === x.best;
  });
  return {
    what: `OR-Library ${set}: as few sticks as proven; the slowest`,
    figure: `${reached.length} of ${some.length}; ${ms(slowest)}`,
    aim: 'all, within a second each',
  };
};

/** Random cuts and offcuts on hand, beside the optimum of a linear program. */
const offcutsRow = async (count: number): Promise<Row> => {
  let [proven, equal, slowest] = [0, 0, 0];
  for (const one of sticksCases(count)) {
    const demands = one.cuts.map((x) => ({ ...x, at: 0, for: 'B1' }));
    const start = performance.now();
    const whole = cutPlan(one, demands)!.filter((x) => x.offcutMm === undefined).length;
    slowest = Math.max(slowest, performance.now() - start);
    const best = await sticksByHighs(one, whole);
    if (best === null) continue;
    proven++;
    if (best === whole) equal++;
  }
  return {
    what: `${count} random cut lists with offcuts on hand: as few whole sticks as HiGHS proves; the slowest`,
    figure: `${equal} of ${proven} proven; ${ms(slowest)}`,
    aim: 'all',
  };
};

/** Cut plans of sticks against what is proven. */
export const cutRows = async (cases: number): Promise<Row[]> => [
  publishedRow('u120'),
  publishedRow('u250'),
  await offcutsRow(cases),
];
