import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';

/** Who says that he is mixing has his moulds full the same half day: a word of longer ago was of another batch. */
const LONGEST_MINUTES = 12 * 60;

/** Whether what was done since ends what was begun: the moulds were filled, or the mix thrown away. */
const isEnded = (record: WorkRecord, moulds: ReadonlySet<string>): boolean =>
  (record.kind === 'poured' || record.kind === 'thrown away') && record.pours.some(({ mould }) => moulds.has(mould));

/**
 * When somebody said that a batch was being mixed which is in its moulds by `filled`; null where nobody did. Some of the moulds
 * that were meant may have been left out.
 *
 * Example: "Mixing now" of A and B at 9:00, then A full at 9:20: 9:00.
 */
export const mixingBegun = (
  records: readonly WorkRecord[],
  pours: readonly { mould: string }[],
  filled: Minute,
): string | null => {
  const moulds = new Set(pours.map(({ mould }) => mould));
  for (const record of [...records].reverse()) {
    if (isEnded(record, moulds)) return null;
    if (record.kind !== 'mixing begun' || ![...moulds].every((mould) => record.moulds.includes(mould))) continue;
    const minutes = filled - minuteOf(record.at);
    return minutes >= 0 && minutes <= LONGEST_MINUTES ? record.at : null;
  }
  return null;
};
