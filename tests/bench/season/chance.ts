import { type Dice, diceOf } from '../../support/random-yard/dice.ts';

/**
 * Dice for one question of a season, told by what it is about and not by when it is asked: "is this Saturday lost?" is
 * answered alike for the program and for the planner by hand, whatever either did before.
 *
 * Example: `diceFor(1, 'lost', '2027-04-10').chance(0.05)` is the same on every run.
 */
export const diceFor = (seed: number, ...about: readonly (string | number)[]): Dice => {
  let hash = 2_166_136_261;
  for (const character of [seed, ...about].join('|')) hash = Math.imul(hash ^ character.charCodeAt(0), 16_777_619);
  return diceOf(hash >>> 0);
};
