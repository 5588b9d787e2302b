import type { Minute } from '../../../shared/time.ts';
import type { Calendar } from '../calendar/calendar.ts';
import type { ComingDays } from './coming-days.ts';
import { type Coming, thereAt } from './there-at.ts';

/** From one minute to another nothing that is bought can be there. */
export interface Gap {
  from: Minute;
  to: Minute;
}

/** The times at which nothing that is bought can be there, or not yet, or not any more. The last one may have no end. */
export const gapsOf = ({ apart }: ComingDays, coming: Coming, calendar: Calendar): Gap[] =>
  apart
    .map(({ after, until }) => ({
      from: calendar.midnightOf(after + 1),
      to: until === null ? Number.POSITIVE_INFINITY : thereAt(until, coming, calendar),
    }))
    .filter(({ from, to }) => from < to);

/** Whether a minute is in one of the gaps. */
export const isInGap = (gaps: readonly Gap[], at: Minute): boolean =>
  gaps.some(({ from, to }) => from <= at && at < to);
