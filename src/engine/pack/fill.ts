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
  const order = options.map((_, i) => i).sort((a, b) => ratio(options[b]!) - ratio(options[a]!) || a - b);
  const counts = options.map(() => 0);
  let best = [...counts];
  let bestWorth = -1;
  let branches = 0;
  const visit = (depth: number, kg: number, minutes: number, worth: number): void => {
    if (worth > bestWorth + EPSILON) {
      bestWorth = worth;
      best = [...counts];
    }
    if (depth === order.length || ++branches > MOST_BRANCHES) return;
    const i = order[depth]!;
    const option = options[i]!;
    if (worth + kg * ratio(option) <= bestWorth + EPSILON) return;
    const byKg = option.kg > 0 ? Math.floor(kg / option.kg + EPSILON) : option.most;
    for (let n = Math.min(option.most, byKg, Math.floor(minutes / option.fillMinutes)); n >= 0; n--) {
      counts[i] = n;
      visit(depth + 1, kg - n * option.kg, minutes - n * option.fillMinutes, worth + n * option.worth);
    }
    counts[i] = 0;
  };
  visit(0, mostKg, mostMinutes, 0);
  return best;
};

const ratio = (option: FillOption): number => (option.kg > 0 ? option.worth / option.kg : Number.MAX_VALUE);
