/**
 * Shares whole minor units out by weights, so that the shares come to just what is shared (largest remainder): each gets
 * the whole units of its exact share, and what is left over goes to those that lost most by that, of equals to the first.
 * Where all weights are 0 the shares are equal ones; without weights there is nobody to share with, and no share.
 *
 * Example: `shareOut(100, [1, 1, 1])` is [34, 33, 33], `shareOut(7, [0, 3, 1])` is [0, 5, 2].
 */
export const shareOut = (minor: number, weights: readonly number[]): number[] => {
  const sum = weights.reduce((all, weight) => all + weight, 0);
  const exact = weights.map((weight) => (minor * (sum > 0 ? weight : 1)) / (sum > 0 ? sum : weights.length));
  const shares = exact.map(Math.floor);
  const left = minor - shares.reduce((all, share) => all + share, 0);
  // So near to each other two remainders are equal ones: the first gets it.
  const lost = exact.map((share, place) => ({ place, by: Math.round((share - Math.floor(share)) * 1e9) }));
  lost.sort((a, b) => b.by - a.by || a.place - b.place);
  for (const { place } of lost.slice(0, left)) shares[place]! += 1;
  return shares;
};
