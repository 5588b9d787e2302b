import { z } from 'zod';

/** Odds that are said and can be chosen: so many times out of so many. */
export const ODDS_SAID = [
  { share: 0.5, times: 1, of: 2 },
  { share: 0.8, times: 8, of: 10 },
  { share: 0.9, times: 9, of: 10 },
  { share: 0.95, times: 19, of: 20 },
] as const;

/** The odds by which a date is promised where a yard says nothing. */
export const USUAL_ODDS = 0.9;

/** So many pieces and days with work make a record by which a day is promised: 1 in 20 is then known to 3 and 4 in 100 or so. */
export const ENOUGH_RECORD = { pieces: 200, sessions: 100 };

/** How often a date that is promised is to be kept, as a yard file has it. */
export const promiseOdds = z.literal(ODDS_SAID.map(({ share }) => share));
/** One of the odds that can be chosen, as a share. */
export type PromiseOdds = z.infer<typeof promiseOdds>;

/**
 * A share that can be chosen, in words.
 *
 * Example: `oddsWords(0.9)` is "9 in 10".
 */
export const oddsWords = (chosen: PromiseOdds): string => {
  const { times, of } = ODDS_SAID.find(({ share }) => share === chosen)!;
  return `${times} in ${of}`;
};
