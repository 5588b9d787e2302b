import type { Minute } from '../../../shared/time.ts';

/** So much is taken from a minute until another, which is not included. */
export interface Span {
  from: Minute;
  to: Minute;
  amount: number;
}

/**
 * The most that half-open spans come to at one instant; a span that is empty counts for nothing.
 *
 * Example: `mostAtOnce([{ from: 0, to: 10, amount: 2 }, { from: 10, to: 20, amount: 3 }])` is 3.
 */
export const mostAtOnce = (spans: Span[]): number => {
  const changes = spans
    .filter((x) => x.to > x.from)
    .flatMap((x) => [
      { at: x.from, amount: x.amount },
      { at: x.to, amount: -x.amount },
    ])
    .sort((a, b) => a.at - b.at || a.amount - b.amount);
  let [level, most] = [0, 0];
  for (const change of changes) {
    level += change.amount;
    most = Math.max(most, level);
  }
  return most;
};
