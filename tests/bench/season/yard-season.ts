import type { HandTally } from './hand-season.ts';
import type { SeasonTally } from './tally.ts';

/** A season of one yard: by the program, and by hand with 0, 1, 2 and 3 sessions in hand. */
export interface YardSeason {
  program: SeasonTally;
  byHand: HandTally[];
}
