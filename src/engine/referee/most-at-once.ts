import type { Minute } from '../../../shared/time.ts';

/** So much is taken from a minute until another, which is not included. */
export interface Span {
  from: Minute;
  to: Minute;
  amount: number;
  /** Nobody chose it: it was there, or had begun. */
  given?: boolean;
}

/**
 * The most that half-open spans come to at one instant at which one was chosen: what is given may be too much by itself.
 * A span that is empty, or takes nothing, counts for nothing.
 *
 * Example: `mostAtOnce([{ from: 0, to: 10, amount: 2 }, { from: 10, to: 20, amount: 3 }])` is 3.
 */
export const mostAtOnce = (spans: Span[]): number => {
  const changes = spans
    .filter((x) => x.to > x.from && x.amount > 0)
    .flatMap((x) => {
      const chosen = x.given ? 0 : 1;
      return [
        { at: x.from, amount: x.amount, chosen },
        { at: x.to, amount: -x.amount, chosen: -chosen },
      ];
    })
    .sort((a, b) => a.at - b.at || a.amount - b.amount);
  let [level, chosen, most] = [0, 0, 0];
  for (const change of changes) {
    level += change.amount;
    chosen += change.chosen;
    if (chosen > 0) most = Math.max(most, level);
  }
  return most;
};
