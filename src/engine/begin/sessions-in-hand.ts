import type { FigureOf } from '../../../shared/figure.ts';

/** With more figures than this still guessed, two sessions are kept in hand. Chosen, not measured. */
const FEW_GUESSES = 3;

/**
 * Sessions in hand that a yard is advised to keep before a date it promises: one, and two while more than three of its
 * figures are guesses. The same figure of several things (minutes to fill each length) counts once.
 *
 * Example: `sessionsInHandFor([])` is 1; with the working, wash, mix and demould minutes of one mix guessed it is 2.
 */
export const sessionsInHandFor = (guesses: readonly FigureOf[]): number =>
  new Set(guesses.map(({ kind, figure }) => `${kind} ${figure}`)).size > FEW_GUESSES ? 2 : 1;
