import { setFixedHours } from '../../../db/stores/yard-store.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { MOST_FIXED_HOURS } from '../typed/yard-form.ts';

const hoursWords = (hours: number): string => {
  if (hours === 0) return 'Sessions are fixed only once they begin';
  return `Sessions are fixed ${hours === 1 ? '1 hour' : `${hours} hours`} before they begin`;
};

/** So many hours before a session begins, all of it stays as it is planned; 0: not ahead of it. */
export const fixHours = (context: UseCaseContext, hours: number | null): Promise<Outcome<Changed<null>>> =>
  changing(context, { kind: 'fixed hours', words: hoursWords(hours ?? 0) }, async (tx) => {
    if (hours === null || hours > MOST_FIXED_HOURS)
      return refuse('hours', `How many hours? Write a whole number, 0 to ${MOST_FIXED_HOURS}.`);
    await setFixedHours(tx, hours);
    return done(null);
  });
