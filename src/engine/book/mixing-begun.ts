import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';

/** Who says that he is mixing has his moulds full the same half day: a word of longer ago was of another batch. */
const LONGEST_MINUTES = 12 * 60;

/** Whether what was done since ends what was begun: the moulds were filled, or the mix thrown away. */
const isEnded = (record: WorkRecord, moulds: ReadonlySet<string>): boolean =>
  (record.kind === 'poured' || record.kind === 'thrown away') && record.pours.some(({ mould }) => moulds.has(mould));

interface Said {
  kind: 'mixing begun' | 'mixed';
  /** No later than this minute. */
  by: Minute;
}

/**
 * When somebody said that a batch was being mixed, or was mixed, which is in its moulds later; null where nobody did. Some of the
 * moulds that were meant may have been left out.
 *
 * Example: "Mixing now" of A and B at 9:00, then A full at 9:20: 9:00.
 */
export const saidOfBatch = (
  records: readonly WorkRecord[],
  pours: readonly { mould: string }[],
  { kind, by }: Said,
): string | null => {
  const moulds = new Set(pours.map(({ mould }) => mould));
  for (const record of [...records].reverse()) {
    if (isEnded(record, moulds)) return null;
    if (record.kind !== kind || ![...moulds].every((mould) => record.moulds.includes(mould))) continue;
    const minutes = by - minuteOf(record.at);
    return minutes >= 0 && minutes <= LONGEST_MINUTES ? record.at : null;
  }
  return null;
};
