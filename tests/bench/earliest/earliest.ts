import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { type Compared, compareDates, FIGURES, type Figure } from './compare.ts';
import { TooLarge } from './enumerate.ts';
import { tinyYard } from './tiny-yard.ts';

const YARDS = 500;

/** Yard, order and proving plans of a mismatch, to look at by hand. */
const save = (folder: string, seed: number, compared: Compared): void => {
  mkdirSync(folder, { recursive: true });
  const { yard, order } = tinyYard(seed);
  const { earliestPlan, firstPlan, latePlan } = compared.plans;
  const files = { yard, order, earliest: earliestPlan, first: firstPlan, late: latePlan };
  for (const [name, value] of Object.entries(files))
    writeFileSync(join(folder, `${seed}.${name}.json`), `${JSON.stringify(value, null, 1)}\n`);
};

const compareOrNull = (seed: number): Compared | null => {
  const { yard, order } = tinyYard(seed);
  try {
    return compareDates(yard, order);
  } catch (error) {
    if (error instanceof TooLarge) return null;
    throw error;
  }
};

/**
 * `npm run bench -- earliest [yards] [--from SEED] [--logs DIR]`: tiny yards planned and asked, against everything that could
 * be done in them. Each figure that is not exact is printed; with `--logs` its yard is saved with a plan that proves it.
 */
export const earliestBench = (words: readonly string[]): void => {
  const options = { from: { type: 'string', default: '0' }, logs: { type: 'string' } } as const;
  const { values, positionals } = parseArgs({ args: [...words], options, allowPositionals: true });
  const [yards, first] = [Number(positionals[0] ?? YARDS), Number(values.from)];
  console.log(
    `\nTiny yards against all that could be done in them, seeds ${first} to ${first + yards - 1}, normal effort`,
  );
  const wrong = new Map<Figure, number>(FIGURES.map((figure) => [figure, 0]));
  let [seen, faults, impossible, proven, wronglyProven] = [0, 0, 0, 0, 0];
  for (let seed = first; seed < first + yards; seed++) {
    const compared = compareOrNull(seed);
    if (!compared) {
      console.log(`  ${seed}: not compared, too large or an order left out`);
      continue;
    }
    seen++;
    faults += compared.faults.length;
    if (compared.isProven) proven++;
    if (compared.isProven && compared.mismatches.some(({ figure }) => figure === 'earliestOn')) wronglyProven++;
    for (const fault of compared.faults) console.log(`  ${seed}: fault in a plan of the enumerator: ${fault}`);
    for (const { figure, planner, exact, isImpossible } of compared.mismatches) {
      wrong.set(figure, wrong.get(figure)! + 1);
      if (isImpossible) impossible++;
      console.log(`  ${seed}: ${figure} ${planner}, ${isImpossible ? 'not possible before' : 'possible'} ${exact}`);
    }
    if (values.logs && compared.mismatches.length > 0) save(values.logs, seed, compared);
  }
  for (const [figure, count] of wrong) console.log(`  ${figure} exact: ${seen - count} of ${seen}`);
  console.log(`  earliestOn proven by the planner: ${proven}, wrongly: ${wronglyProven}`);
  console.log(`  better than possible: ${impossible}; faults in plans of the enumerator: ${faults}`);
};
