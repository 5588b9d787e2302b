import type { RunNeed } from './runs.ts';

/** For every sum that panels can make, the fewest panels that make it. */
export type FewestBySum = ReadonlyMap<number, number>;

/**
 * The fewest panels for every sum of the lengths up to and including a limit, 0 with none. Level by level: sums of one
 * panel, of two, and so on, each met first with its fewest. Whole numbers of any one unit, all above 0.
 *
 * Example: `fewestBySum([900, 600], 1800).get(1500)` is 2; no panels make 1000, `fewestBySum([900, 600],
 * 1800).has(1000)` is false.
 */
export const fewestBySum = (lengths: readonly number[], upTo: number): FewestBySum => {
  const fewest = new Map<number, number>([[0, 0]]);
  let level = [0];
  for (let panels = 1; level.length > 0; panels++) {
    const next: number[] = [];
    for (const sum of level)
      for (const length of lengths) {
        const longer = sum + length;
        if (longer > upTo || fewest.has(longer)) continue;
        fewest.set(longer, panels);
        next.push(longer);
      }
    level = next;
  }
  return fewest;
};

/**
 * How many panels a run takes in one course at the least; undefined when the lengths can't make it. `fewest` is of the
 * same lengths. Nanometres, or any one unit.
 *
 * A run that steps has one panel that is shorter by the step in every other course, and all others are the same in
 * every course. Any other way to step back at both ends with the joints one thickness apart takes as many panels, of
 * as many lengths or more: where a second panel grew and a third shrank, both may as well have stayed.
 *
 * Example: `panelsInRun({ longNano: 1500, stepNano: 0 }, [900, 600], fewestBySum([900, 600], 1500))` is 2.
 */
export const panelsInRun = (
  { longNano, stepNano }: RunNeed,
  lengths: readonly number[],
  fewest: FewestBySum,
): number | undefined => {
  if (longNano <= 0) return undefined;
  if (stepNano === 0) return fewest.get(longNano);
  let least: number | undefined;
  for (const length of lengths) {
    const rest = fewest.get(longNano - length);
    if (rest === undefined || !lengths.includes(length - stepNano)) continue;
    if (least === undefined || rest + 1 < least) least = rest + 1;
  }
  return least;
};

/** Effort is counted in steps of search, never in time. */
export interface Effort {
  steps: number;
  readonly most: number;
}

/**
 * True when a search has taken more steps than it may: it ends with what it has.
 *
 * Example: `isSpent({ steps: 3, most: 3 })` is false, `isSpent({ steps: 4, most: 3 })` is true.
 */
export const isSpent = ({ steps, most }: Effort): boolean => steps > most;

/** Panels of a few of the lengths that make a sum with no more than all the lengths need, the longest first; else null. */
const filled = (
  sum: number,
  few: readonly number[],
  from: number,
  fewest: FewestBySum,
  effort: Effort,
): number[] | null => {
  if (sum === 0) return [];
  for (let i = from; i < few.length && !isSpent(effort); i++) {
    effort.steps++;
    const length = few[i]!;
    if (fewest.get(sum - length) !== fewest.get(sum)! - 1) continue;
    const rest = filled(sum - length, few, i, fewest, effort);
    if (rest) return [length, ...rest];
  }
  return null;
};

/** The panels of one side in the courses in which its run is longer and in the others: as many in each, joint by joint. */
export interface Run {
  long: number[];
  short: number[];
}

/**
 * A run of a few of the lengths, with `panels` panels: as many as it takes at the least with all the lengths that `fewest`
 * is of. Null when those few can't make it with so few, or when the effort is spent. `few` from the longest on.
 */
export const runOfFew = (
  { longNano, stepNano }: RunNeed,
  panels: number,
  few: readonly number[],
  fewest: FewestBySum,
  effort: Effort,
): Run | null => {
  if (stepNano === 0) {
    const all = filled(longNano, few, 0, fewest, effort);
    return all && { long: all, short: all };
  }
  for (const first of few) {
    if (fewest.get(longNano - first) !== panels - 1 || !few.includes(first - stepNano)) continue;
    const rest = filled(longNano - first, few, 0, fewest, effort);
    if (rest) return { long: [first, ...rest], short: [first - stepNano, ...rest] };
  }
  return null;
};
