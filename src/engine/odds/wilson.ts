/** The 0.975 quantile of the standard normal distribution: 95 % lie between it and its negative. */
const Z = 1.959964;

/**
 * The 95 % interval of Wilson (1927) for a share that was seen `count` times in `of` cases, both between 0 and 1. From no
 * case at all it is everything. Source: E. B. Wilson, Journal of the American Statistical Association 22, 209-212.
 *
 * Example: `wilson(0, 20)` is from 0 to 0.161.
 */
export const wilson = (count: number, of: number): { from: number; to: number } => {
  if (of === 0) return { from: 0, to: 1 };
  const share = count / of;
  const squared = (Z * Z) / of;
  const middle = share + squared / 2;
  const half = Z * Math.sqrt((share * (1 - share)) / of + squared / (4 * of));
  return { from: Math.max(0, (middle - half) / (1 + squared)), to: Math.min(1, (middle + half) / (1 + squared)) };
};
