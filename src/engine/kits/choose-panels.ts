import type { Turns } from './corners.ts';
import {
  type Effort,
  type FewestBySum,
  fewestBySum,
  isSpent,
  panelsInRun,
  type Run,
  runOf,
  unlimited,
} from './fewest-panels.ts';
import type { RunNeed } from './runs.ts';

/** One way to turn the corners, and what every side then needs. */
export interface Way {
  turns: Turns;
  needs: RunNeed[];
}

export interface Chosen {
  turns: Turns;
  needs: RunNeed[];
  runs: Run[];
  /** In one course. */
  panels: number;
  /** False when the search was stopped before it knew that no other choice has fewer different lengths. */
  proven: boolean;
}

const panelsInCourse = (needs: readonly RunNeed[], lengths: readonly number[], fewest: FewestBySum): number => {
  let panels = 0;
  for (const need of needs) panels += panelsInRun(need, lengths, fewest) ?? Number.POSITIVE_INFINITY;
  return panels;
};

/** So many of the lengths at a time, the longest first. */
const subsets = function* (lengths: readonly number[], size: number, from = 0): Generator<number[]> {
  if (size === 0) yield [];
  else
    for (let i = from; i + size <= lengths.length; i++)
      for (const rest of subsets(lengths, size - 1, i + 1)) yield [lengths[i]!, ...rest];
};

const chosenFrom = (
  way: Way,
  lengths: readonly number[],
  fewest: FewestBySum,
  panels: number,
  proven: boolean,
): Chosen => ({
  ...way,
  runs: way.needs.map((need) => runOf(need, lengths, fewest)),
  panels,
  proven,
});

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
  const fewest = fewestBySum(usable, longest, unlimited());
  const counted = different(ways).map((way) => ({ way, panels: panelsInCourse(way.needs, usable, fewest) }));
  const panels = Math.min(...counted.map((each) => each.panels));
  if (!Number.isFinite(panels)) return null;
  const best = counted.filter((each) => each.panels === panels).map(({ way }) => way);
  for (let size = 1; size < usable.length; size++)
    for (const few of subsets(usable, size)) {
      const fewestOfFew = fewestBySum(few, longest, effort);
      if (isSpent(effort)) return chosenFrom(best[0]!, usable, fewest, panels, false);
      const way = best.find(({ needs }) => panelsInCourse(needs, few, fewestOfFew) === panels);
      if (way) return chosenFrom(way, few, fewestOfFew, panels, true);
    }
  return chosenFrom(best[0]!, usable, fewest, panels, true);
};
