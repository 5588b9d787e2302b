import { minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';

/** When the first and the last of some pieces came out of their moulds, as instants. */
export interface StrippedSince {
  first: string;
  last: string;
}

const cameOutGood = (record: WorkRecord, casting: string): boolean =>
  (record.kind === 'stripped' || record.kind === 'after mending') &&
  record.casting === casting &&
  record.cameOut === 'good';

/**
 * Since when so many pieces of a casting stand in the yard, by what was recorded: the last so many that came out good, for the
 * oldest go first. Null where not so many were recorded.
 */
export const strippedSince = (records: readonly WorkRecord[], casting: string, count: number): StrippedSince | null => {
  if (count === 0) return null;
  const times = records
    .filter((record) => cameOutGood(record, casting))
    .map(({ at }) => at)
    .sort((a, b) => minuteOf(a) - minuteOf(b))
    .slice(-count);
  return times.length < count ? null : { first: times[0]!, last: times.at(-1)! };
};
