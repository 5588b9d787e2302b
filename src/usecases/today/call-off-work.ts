import { replaceDay } from '../../../db/stores/work-store.ts';
import { dayWords } from '../../../shared/day-words.ts';
import { dayNumber } from '../../../shared/time.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { hoursKind } from '../plan/hours-changed.ts';
import { sessionsOfDay } from '../plan/hours-of-day.ts';

/** No work is done on a date: neither its usual hours nor its one-off ones. */
export const callOffWork = (context: UseCaseContext, date: string): Promise<Outcome<Changed<null>>> =>
  changing(context, { kind: hoursKind(date), words: `No work on ${dayWords(date)}` }, async (tx, yard) => {
    if (date < today(yard.yard.timeZone, context.now))
      return refuse('date', 'That day has passed. Nothing was changed.');
    if (sessionsOfDay(yard, dayNumber(date)).length === 0)
      return refuse('date', `There are no hours on ${dayWords(date)} as it is. Nothing was changed.`);
    await replaceDay(tx, date, []);
    return done(null);
  });
