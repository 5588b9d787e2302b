import type { Problem } from './problem.ts';

/**
 * What the expected weather has against a batch (R9), or null: too hot while it is mixed and filled, or too cold at any time
 * from then to the end of protection.
 */
export const weatherFault = (problem: Problem, mixIndex: number, start: number, lastFill: number): string | null => {
  const { minCelsius, maxCelsius, protectMinutes } = problem.mixes[mixIndex]!;
  const { climate } = problem;
  if (climate.nextHotterThan(maxCelsius, start) <= lastFill) return 'it will be too hot';
  const cold = climate.nextColderThan(minCelsius, start) <= Math.floor(lastFill + protectMinutes);
  return cold ? 'it will be too cold' : null;
};
