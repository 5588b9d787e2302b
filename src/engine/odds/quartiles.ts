/** The middle of some numbers, and what the middle half of them lies between. */
export interface Quartiles {
  lower: number;
  median: number;
  upper: number;
}

const at = (sorted: readonly number[], share: number): number => {
  const place = share * (sorted.length - 1);
  const below = sorted[Math.floor(place)] ?? Number.NaN;
  const above = sorted[Math.ceil(place)] ?? Number.NaN;
  return below + (above - below) * (place - Math.floor(place));
};

/**
 * The quartiles of some numbers, between two of them in proportion (Hyndman and Fan 1996, definition 7). NaN of none.
 *
 * Example: of 7, 9, 10, 12 and 30: 9, 10 and 12.
 */
export const quartiles = (numbers: readonly number[]): Quartiles => {
  const sorted = [...numbers].sort((a, b) => a - b);
  return { lower: at(sorted, 0.25), median: at(sorted, 0.5), upper: at(sorted, 0.75) };
};
