import { isInstant, minuteOf } from '../../../shared/time.ts';
import { done, type Outcome, refuse } from './context.ts';

/** The instant at which work that is recorded now was done: one that is named and not to come, or just now. */
export const writtenAt = (at: string | null | undefined, now: string): Outcome<string> => {
  if (at === null || at === undefined) return done(now);
  if (!isInstant(at)) return refuse('at', 'Write when it was done again. Nothing was changed.');
  return minuteOf(at) <= minuteOf(now) ? done(at) : refuse('at', 'That time is still to come.');
};
