import type { Relaxed } from './relaxed.ts';
import type { Packing, Pattern } from './rounds.ts';

const TOLERANCE = 1e-6;
/** So many ways to round up are tried at each step. */
const WIDTH = 4;

const less = (wanted: number[], counts: number[], times: number): number[] =>
  wanted.map((n, kind) => n - times * counts[kind]!);

/** The relaxed cutting of what is wanted still, its patterns for every kind. */
const relaxedOf = (wanted: number[], relax: (kinds: number[], wanted: number[]) => Relaxed): Relaxed => {
  const kinds = wanted.flatMap((n, kind) => (n > 0 ? [kind] : []));
  const { patterns, bound } = relax(
    kinds,
    kinds.map((kind) => wanted[kind]!),
  );
  const forAll = (counts: number[]): number[] => {
    const all = wanted.map(() => 0);
    kinds.forEach((kind, i) => {
      all[kind] = counts[i]!;
    });
    return all;
  };
  return { patterns: patterns.map((x) => ({ counts: forAll(x.counts), times: x.times })), bound };
};

/**
 * Looks for a packing in no more than `aim` sticks or sheets: the whole parts of the relaxed cutting are taken, which loses
 * nothing; then one of the patterns used in part, the most used first, and what is left is relaxed again. Where that proves
 * more than the aim to be needed, the next pattern is tried instead. Null once `mostNodes` cuttings have been relaxed, or none
 * is found. `relax` is given the kinds that are wanted and how many of each.
 *
 * Example: in a stick of 10, of 6, 5, 4, 3 and 2, one each: {6, 4} and {5, 3, 2}, for an aim of 2.
 */
export const dive = (
  wanted: number[],
  aim: number,
  relax: (kinds: number[], wanted: number[]) => Relaxed,
  mostNodes: number,
): Packing | null => {
  let nodes = 0;
  const search = (all: number[], taken: Pattern[], sticks: number): Packing | null => {
    if (all.every((n) => n === 0)) return sticks <= aim ? { patterns: taken, sticks, steps: nodes } : null;
    if (nodes++ >= mostNodes) return null;
    const { patterns, bound } = relaxedOf(all, relax);
    if (sticks + bound > aim) return null;
    const whole = patterns.map((x) => ({ ...x, times: Math.floor(x.times + TOLERANCE) })).filter((x) => x.times > 0);
    const left = whole.reduce((rest, x) => less(rest, x.counts, x.times), all);
    const so = [...taken, ...whole];
    const used = sticks + whole.reduce((sum, x) => sum + x.times, 0);
    if (left.every((n) => n === 0)) return search(left, so, used);
    const parts = patterns
      .map((x) => ({ counts: x.counts, part: x.times - Math.floor(x.times + TOLERANCE) }))
      .filter((x) => x.part > TOLERANCE && x.counts.every((n, kind) => n <= left[kind]!))
      .sort((a, b) => b.part - a.part);
    for (const { counts } of parts.slice(0, WIDTH)) {
      const found = search(less(left, counts, 1), [...so, { counts, times: 1 }], used + 1);
      if (found) return found;
    }
    return null;
  };
  return search(wanted, [], 0);
};
