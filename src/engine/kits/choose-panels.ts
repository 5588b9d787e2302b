import type { Turns } from './corners.ts';
import {
  type Effort,
  type FewestBySum,
  fewestBySum,
  isSpent,
  panelsInRun,
  type Run,
  runOfFew,
} from './fewest-panels.ts';
import type { RunNeed } from './runs.ts';

/** One way to turn the corners, and what every side then needs. */
export interface Way {
  turns: Turns;
  needs: RunNeed[];
}

/** The panels that were chosen: a run for every side, in the order of the sides, and how the corners turn for them. */
export interface Chosen extends Way {
  runs: Run[];
  /** False when the search was stopped before it knew that no other choice has fewer different lengths. */
  proven: boolean;
}

/** A way, with the fewest panels of each of its sides in one course. */
interface Counted extends Way {
  panels: number[];
  total: number;
}

const count = (way: Way, lengths: readonly number[], fewest: FewestBySum): Counted => {
  const panels = way.needs.map((need) => panelsInRun(need, lengths, fewest) ?? Number.POSITIVE_INFINITY);
  return { ...way, panels, total: panels.reduce((sum, each) => sum + each, 0) };
};

/** So many of the lengths at a time, the longest first. */
const subsets = function* (lengths: readonly number[], size: number, from = 0): Generator<number[]> {
  if (size === 0) yield [];
  else
    for (let i = from; i + size <= lengths.length; i++)
      for (const rest of subsets(lengths, size - 1, i + 1)) yield [lengths[i]!, ...rest];
};

/** Ways that need the same runs, whichever side they are on, take the same panels: the first of them stands for all. */
const different = (ways: readonly Way[]): Way[] => {
  const seen = new Map<string, Way>();
  for (const way of ways) {
    const key = way.needs
      .map(({ longNano, stepNano }) => `${longNano} ${stepNano}`)
      .sort()
      .join();
    if (!seen.has(key)) seen.set(key, way);
  }
  return [...seen.values()];
};

/** All runs of a way from a few of the lengths, or null when one of them can't be made of those with as few panels. */
const runsOfFew = (
  { needs, panels }: Counted,
  few: readonly number[],
  fewest: FewestBySum,
  effort: Effort,
): Run[] | null => {
  const runs: Run[] = [];
  for (const [side, need] of needs.entries()) {
    const run = runOfFew(need, panels[side]!, few, fewest, effort);
    if (!run) return null;
    runs.push(run);
  }
  return runs;
};

/**
 * The panels for every side: the fewest, and of those choices one with the fewest different lengths. Exact: first the
 * fewest panels with all lengths, over all ways to turn the corners; then one length alone, two, three ... until a choice
 * of lengths does with no more panels. Of equals the longest lengths, and the earliest way. `lengths` in nanometres, each
 * once. Null when the panels can't make it. When the effort is spent the best so far is given, not `proven`.
 *
 * Example: a row of 1800 from 1200, 900 and 600 takes two panels either way, and two of 900 are of one length.
 */
export const choosePanels = (ways: readonly Way[], lengths: readonly number[], effort: Effort): Chosen | null => {
  const longest = Math.max(...ways.flatMap(({ needs }) => needs.map(({ longNano }) => longNano)));
  const usable = [...lengths].sort((a, b) => b - a).filter((length) => length <= longest);
  const fewest = fewestBySum(usable, longest);
  const counted = different(ways).map((way) => count(way, usable, fewest));
  const least = Math.min(...counted.map(({ total }) => total));
  if (!Number.isFinite(least)) return null;
  const best = counted.filter(({ total }) => total === least);
  for (let size = 1; size < usable.length && !isSpent(effort); size++)
    for (const few of subsets(usable, size)) {
      if (isSpent(effort)) break;
      for (const way of best) {
        const runs = runsOfFew(way, few, fewest, effort);
        if (runs) return { ...way, runs, proven: true };
      }
    }
  const proven = !isSpent(effort);
  const runs = runsOfFew(best[0]!, usable, fewest, { steps: 0, most: Number.POSITIVE_INFINITY });
  if (!runs) throw new Error('Panels that make a size could not be laid out.');
  return { ...best[0]!, runs, proven };
};
