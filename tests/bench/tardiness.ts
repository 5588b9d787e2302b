import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readYardFile } from '../../shared/yard-file.ts';
import { planYard } from '../../src/engine/plan.ts';
import { audit } from '../contract/audit-plan.mjs';
import { median, ms, type Row } from './table.ts';

interface Instance {
  name: string;
  best: number;
}

const contract = (name: string): string => fileURLToPath(new URL(`../contract/${name}`, import.meta.url));

const yardOf = (name: string) => {
  const text = execFileSync('node', [contract('tardiness-yard.mjs'), name], { encoding: 'utf8', maxBuffer: 2 ** 26 });
  const read = readYardFile(JSON.parse(text));
  if (!read.ok) throw new Error(`${name} has faults`);
  return read.yard;
};

/**
 * Single-machine total weighted tardiness, OR-Library wt40 and wt50 (Beasley; instances of Crauwels, Potts and Van
 * Wassenhove 1998), each as a yard of one mould: how many reach the optimum or best known, how far off in all, and what
 * the bound proves. `every`: only every so many-th instance.
 */
export const tardinessRows = (every: number, effort: 'normal' | 'thorough'): Row[] => {
  const all = (JSON.parse(readFileSync(contract('weighted-tardiness.json'), 'utf8')) as Instance[]).filter(
    (_, i) => i % every === 0,
  );
  let [reached, over, best, bound, faults] = [0, 0, 0, 0, 0];
  const times: number[] = [];
  const missed: string[] = [];
  for (const instance of all) {
    const yard = yardOf(instance.name);
    const start = performance.now();
    const plan = planYard(yard, { effort });
    times.push(performance.now() - start);
    if (plan.score.weightedDaysLate <= instance.best) reached++;
    else missed.push(`${instance.name} ${plan.score.weightedDaysLate} to ${instance.best}`);
    over += plan.score.weightedDaysLate - instance.best;
    best += instance.best;
    bound += plan.bound?.weightedDaysLate ?? 0;
    faults += audit(yard, plan).faults.length;
  }
  return [
    {
      what: `optimum or best known reached, of ${all.length}`,
      figure: `${reached}`,
      aim: effort === 'normal' ? 'at least 90 %' : 'all',
    },
    { what: 'total over the best known', figure: `${((100 * over) / best).toFixed(3)} %`, aim: 'under 0.5 %' },
    {
      what: 'bound, of the sum of the best known',
      figure: `${((100 * bound) / best).toFixed(1)} %`,
      aim: 'at least 50 %',
    },
    { what: 'faults found by the audit', figure: `${faults}`, aim: 'none' },
    {
      what: 'time of one plan, median',
      figure: ms(median(times)),
      aim: effort === 'normal' ? 'under 2 s' : 'under 30 s',
    },
    { what: 'not reached', figure: missed.length ? missed.join('; ') : 'none', aim: '' },
  ];
};
