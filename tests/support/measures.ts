import type { Measures } from '../../src/usecases/typed/measures.ts';

/** A yard that has said nothing about its habits. */
export const METRIC: Measures = {
  system: 'metric',
  english: 'British',
  currency: 'EUR',
  weekStart: 'MO',
  floatDays: 1,
};

export const US_HABITS: Measures = { system: 'US', english: 'US', currency: 'USD', weekStart: 'SU', floatDays: 1 };
