import { sortFew } from '../sort-few.ts';

/** What one more piece of a casting does to a batch: its mass, its minutes, how many there can be, what it is worth. */
export interface FillOption {
  casting: number;
  kg: number;
  fillMinutes: number;
  most: number;
  worth: number;
}

const EPSILON = 1e-9;
/** Branches looked at before the best so far is taken; real batches hold a few pieces of a few castings. */
const MOST_BRANCHES = 240;

/** A filling that is being looked for: options by worth per kg, that of each, and the counts tried and best so far. */
interface Search {
  options: FillOption[];
  order: number[];
  ratios: number[];
  counts: number[];
  best: number[];
  bestWorth: number;
  branches: number;
}

const ratio = (option: FillOption): number => (option.kg > 0 ? option.worth / option.kg : Number.MAX_VALUE);

/** Most pieces of an option that a mass and minutes have room for; under none where they are overdrawn. */
export const mostThatFit = ({ kg: each, fillMinutes, most }: FillOption, kg: number, minutes: number): number => {
  const byKg = each > 0 ? Math.floor(kg / each + EPSILON) : most;
  return Math.min(most, byKg, Math.floor(minutes / fillMinutes));
};

const visit = (search: Search, depth: number, kg: number, minutes: number, worth: number): void => {
  const { order, counts, best } = search;
  if (worth > search.bestWorth + EPSILON) {
    search.bestWorth = worth;
    for (let i = 0; i < counts.length; i++) best[i] = counts[i]!;
  }
  if (depth === order.length || ++search.branches > MOST_BRANCHES) return;
  const i = order[depth]!;
  const option = search.options[i]!;
  if (worth + kg * search.ratios[i]! <= search.bestWorth + EPSILON) return;
  for (let n = mostThatFit(option, kg, minutes); n >= 0; n--) {
    counts[i] = n;
    visit(search, depth + 1, kg - n * option.kg, minutes - n * option.fillMinutes, worth + n * option.worth);
  }
  counts[i] = 0;
};

/**
 * The most worthwhile filling of one batch: how many pieces of each option, within a mass and a number of minutes.
 * Depth first from "as many as fit" downwards, options in order of worth per kg, cut off by the worth that the mass
 * left could still bring; after a fixed number of branches the best so far is taken, so that the answer never depends
 * on the machine. Returns counts in the order of `options`.
 *
 * Example: 24.9 kg beat the 21 kg of [0, 2], and two of the first weigh too much: `fillBatch([{ kg: 14.4, fillMinutes:
 * 7, most: 2, worth: 14.4 }, { kg: 10.5, fillMinutes: 6, most: 3, worth: 10.5 }], 27.5, 20)` is [1, 1].
 */
export const fillBatch = (options: FillOption[], mostKg: number, mostMinutes: number): number[] => {
  const ratios = options.map(ratio);
  const order = sortFew(
    options.map((_, i) => i),
    (a, b) => ratios[b]! - ratios[a]! || a - b,
  );
  const none = options.map(() => 0);
  const search: Search = { options, order, ratios, counts: none, best: [...none], bestWorth: -1, branches: 0 };
  visit(search, 0, mostKg, mostMinutes, 0);
  return search.best;
};
