import { minuteOf } from './time.ts';
import type { WorkRecord } from './work-record.ts';

/** A batch that went into its moulds, as it was recorded. */
export type PouredRecord = Extract<WorkRecord, { kind: 'poured' }>;

/** A batch as it was recorded: poured, or thrown away. */
export type BatchRecord = Extract<WorkRecord, { kind: 'poured' | 'thrown away' }>;

/** A batch is known by the first of its moulds and by when it was recorded to be full. */
export interface BatchKey {
  minute: number;
  mould: string;
}

/** What a batch is known by, for good: neither changes when more is told of it. */
export const batchKey = ({ at, pours }: BatchRecord): BatchKey => ({ minute: minuteOf(at), mould: pours[0]!.mould });

/**
 * Whether a record is of a batch, and of that one where a key is given.
 *
 * Example: `isBatch({ kind: 'coated', at: '2027-05-08T09:05:00Z', mould: 'A' })` is false.
 */
export const isBatch = (record: WorkRecord, key?: BatchKey): record is BatchRecord => {
  if (record.kind !== 'poured' && record.kind !== 'thrown away') return false;
  const { minute, mould } = batchKey(record);
  return key === undefined || (minute === key.minute && mould === key.mould);
};

/** Whether bags of one date are in a batch; `material` null: of any. */
export const hasBagDate = ({ bagDates = [] }: BatchRecord, on: string, material: string | null): boolean =>
  bagDates.some((one) => one.on === on && (material === null || one.material === material));
