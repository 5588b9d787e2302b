import { isInstant, type Minute, minuteOf } from '../../../shared/time.ts';
import { done, type Outcome, refuse } from './context.ts';

/** The minute at which work that is written down now was done: an instant that is named and not to come, or just now. */
export const writtenAt = (at: string | null | undefined, now: string): Outcome<Minute> => {
  if (at === null || at === undefined) return done(minuteOf(now));
  if (!isInstant(at)) return refuse('at', 'Write when it was done again. Nothing was changed.');
  return minuteOf(at) <= minuteOf(now) ? done(minuteOf(at)) : refuse('at', 'That time is still to come.');
};
