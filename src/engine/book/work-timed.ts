import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';

/** A task that follows another within so many minutes follows it at once: nobody stood about meanwhile. */
const AT_ONCE_MINUTES = 5;
/** Longer than this is no task of a yard, but a break that nobody told of. */
const LONGEST_MINUTES = 4 * 60;

/** When the last thing that was recorded was tapped; null where it was told of later, or begins something. */
const lastTap = (records: readonly WorkRecord[]): string | null => {
  const last = records.at(-1);
  return (last && 'tappedAt' in last && last.tappedAt) || null;
};

/** A task that was tapped as it ended. */
interface TappedTask {
  /** When it was to begin, by the plan as it stood. */
  planned: Minute;
  tapped: Minute;
  /** When all else was to begin that is not recorded yet. */
  others: readonly Minute[];
  /** How many people were there. */
  people: number;
}

/**
 * When a task was begun of which only the end was tapped: at the tap before it, where one person is there and the plan has it
 * come right after what that tap was of. Null where that cannot be told.
 *
 * Example: stripped at 10:00 by tap; the next set-up planned from 10:01 and tapped at 10:20 was begun at 10:00.
 */
export const begunAtTap = (
  records: readonly WorkRecord[],
  { planned, tapped, others, people }: TappedTask,
): string | null => {
  const before = lastTap(records);
  if (before === null || people !== 1) return null;
  const from = minuteOf(before);
  const followsAtOnce = planned - from <= AT_ONCE_MINUTES && others.every((other) => other >= planned);
  return followsAtOnce && tapped > from && tapped - from <= LONGEST_MINUTES ? before : null;
};
