import type { Problem } from './problem.ts';

/**
 * What the expected weather has against a batch (R9), or null: too hot on its day, or too cold on any day from then to the
 * end of protection.
 */
export const weatherFault = (problem: Problem, mixIndex: number, start: number, lastFill: number): string | null => {
  const { minCelsius, maxCelsius, protectMinutes } = problem.mixes[mixIndex]!;
  const { climate, calendar } = problem;
  const day = calendar.dayOf(start);
  const celsius = climate.celsiusOn(day);
  if (celsius === null) return null;
  if (celsius > maxCelsius) return 'it will be too hot';
  const cold = climate.nextDayColderThan(minCelsius, day) <= calendar.dayOf(Math.floor(lastFill + protectMinutes));
  return cold ? 'it will be too cold' : null;
};
