import type { RunNeed } from './runs.ts';

/** Effort is counted in steps of search, never in time. */
export interface Effort {
  steps: number;
  readonly most: number;
}

/** For what is bounded by itself. */
export const unlimited = (): Effort => ({ steps: 0, most: Number.POSITIVE_INFINITY });

export const isSpent = ({ steps, most }: Effort): boolean => steps > most;

/** For every sum that panels can make, the fewest panels that make it. */
export type FewestBySum = ReadonlyMap<number, number>;

/**
 * The fewest panels for every sum of the lengths up to and including a limit, 0 with none. Level by level: sums of one
 * panel, of two, and so on, each met first with its fewest. Whole numbers of any one unit, all above 0.
 *
 * Example: `fewestBySum([900, 600], 1800, …)` gives 0: 0, 600: 1, 900: 1, 1200: 2, 1500: 2, 1800: 2.
 */
export const fewestBySum = (lengths: readonly number[], upTo: number, effort: Effort): FewestBySum => {
  const fewest = new Map<number, number>([[0, 0]]);
  let level = [0];
  for (let panels = 1; level.length > 0 && !isSpent(effort); panels++) {
    const next: number[] = [];
    for (const sum of level)
      for (const length of lengths) {
        effort.steps++;
        const longer = sum + length;
        if (longer > upTo || fewest.has(longer)) continue;
        fewest.set(longer, panels);
        next.push(longer);
      }
    level = next;
  }
  return fewest;
};

/** The panels of one side in the courses in which its run is longer and in the others: as many in each, joint by joint. */
export interface Run {
  long: number[];
  short: number[];
}

/** Panels that make a sum, the longest first, as few as there can be. */
const panelsOf = (sum: number, lengths: readonly number[], fewest: FewestBySum): number[] => {
  const panels: number[] = [];
  for (let rest = sum; rest > 0; ) {
    const length = lengths.find((one) => fewest.get(rest - one) === fewest.get(rest)! - 1)!;
    panels.push(length);
    rest -= length;
  }
  return panels;
};

/**
 * The first panel of a run that steps: it is shorter by the step in every other course, and all others are the same in
 * every course. Any other way to step back at both ends with the joints one thickness apart takes as many panels, of as
 * many lengths or more: where a second panel grew and a third shrank, both may as well have stayed.
 */
const stepping = (
  { longNano, stepNano }: RunNeed,
  lengths: readonly number[],
  fewest: FewestBySum,
): number | undefined => {
  let best: number | undefined;
  for (const length of lengths) {
    const rest = fewest.get(longNano - length);
    if (rest === undefined || !lengths.includes(length - stepNano)) continue;
    if (best === undefined || rest < fewest.get(longNano - best)!) best = length;
  }
  return best;
};

/** How many panels a run takes in one course at the least; undefined when they can't make it. */
export const panelsInRun = (need: RunNeed, lengths: readonly number[], fewest: FewestBySum): number | undefined => {
  if (need.longNano <= 0) return undefined;
  if (need.stepNano === 0) return fewest.get(need.longNano);
  const first = stepping(need, lengths, fewest);
  return first === undefined ? undefined : 1 + fewest.get(need.longNano - first)!;
};

/** The run itself. `lengths` from the longest to the shortest; the need has to be one that `panelsInRun` can make. */
export const runOf = (need: RunNeed, lengths: readonly number[], fewest: FewestBySum): Run => {
  if (need.stepNano === 0) {
    const panels = panelsOf(need.longNano, lengths, fewest);
    return { long: panels, short: panels };
  }
  const first = stepping(need, lengths, fewest)!;
  const rest = panelsOf(need.longNano - first, lengths, fewest);
  return { long: [first, ...rest], short: [first - need.stepNano, ...rest] };
};
