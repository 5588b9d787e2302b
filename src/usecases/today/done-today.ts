import type { ChangeHead } from '../../../db/stores/change-store.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { Calendar } from '../../engine/calendar/calendar.ts';
import type { DoneFacts } from './today-model.ts';
import { WORK_KINDS } from './work-change-kinds.ts';

/** What was recorded on the day of a minute and still stands, the first first. `changes` come newest first. */
export const doneOnDay = (
  changes: readonly ChangeHead[],
  now: Minute,
  calendar: Calendar,
  kinds: readonly string[] = WORK_KINDS,
): DoneFacts[] => {
  const midnight = calendar.midnightOf(calendar.dayOf(now));
  return changes
    .filter(({ kind, at, undoneBy }) => undoneBy === null && kinds.includes(kind) && minuteOf(at) >= midnight)
    .map(({ id, at, words, by }) => ({ change: id, at: calendar.instantText(minuteOf(at)), words, by }))
    .reverse();
};
