import { NEVER, type Problem } from '../decoder/problem.ts';
import { whenThere } from '../decoder/stock.ts';
import { bagsFor } from '../pack/bags.ts';

const EPSILON = 1e-9;

/** So much of each material. */
type Needs = readonly { material: number; quantity: number }[];

/** What a batch of these pieces uses, or null where it is more than the mix allows (R4). */
export const goodsOfBatch = (problem: Problem, castings: readonly number[]): Needs | null => {
  const mix = problem.mixes[problem.castings[castings[0]!]!.mix]!;
  const kg = castings.reduce((n, c) => n + problem.castings[c]!.kg, 0);
  const bags = bagsFor(kg, mix.yieldKgPerBag, mix.bagStep);
  if (bags > mix.maxBags + EPSILON) return null;
  return [
    ...mix.perBag.map(({ material, quantity }) => ({ material, quantity: quantity * bags })),
    ...castings.flatMap((c) => problem.castings[c]!.perPiece),
  ];
};

const sumsOf = (needs: Needs): Map<number, number> => {
  const sums = new Map<number, number>();
  for (const { material, quantity } of needs) sums.set(material, (sums.get(material) ?? 0) + quantity);
  return sums;
};

/** First minute from one on at which all of it is there beside what has been used; NEVER when it will not be (R10). */
export const thereFrom = (problem: Problem, used: readonly number[], needs: Needs, from: number): number => {
  let at = from;
  for (const [index, quantity] of sumsOf(needs)) {
    const material = problem.materials[index]!;
    at = Math.max(at, whenThere(material, material.onHand - used[index]!, quantity, from));
  }
  return Math.min(NEVER, at);
};

/** What has been used once all that is taken at a minute; from when anything can be bought, uses are bought for. */
export const usedAfter = (problem: Problem, used: readonly number[], needs: Needs, at: number): readonly number[] => {
  const sums = sumsOf(needs);
  return used.map((u, m) => (at < problem.materials[m]!.plentyFrom ? u + (sums.get(m) ?? 0) : u));
};

/** Materials that may run short by what these orders and all that is poured for them could use at the very most. */
export const mayRunShort = (problem: Problem, material: number, most: number): boolean => {
  const { onHand, plentyFrom } = problem.materials[material]!;
  return plentyFrom > problem.now && onHand + EPSILON < most;
};
