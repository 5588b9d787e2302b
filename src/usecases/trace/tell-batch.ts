import { numberedWorkRecords, setWorkRecord } from '../../../db/stores/work-record-store.ts';
import { type BatchKey, isBatch, type PouredRecord } from '../../../shared/batch-record.ts';
import { type WorkRecord, workRecord } from '../../../shared/work-record.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type BagDates, bagOf } from '../../engine/book/bag-dates.ts';
import type { BatchTold } from '../../engine/book/work-done.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from '../core/context.ts';
import { atWords } from '../core/day-words.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { toldTyped } from '../typed/batch-form.ts';
import type { DateReading } from '../typed/date-typed.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { TypedReader } from '../typed/typed-reader.ts';

/** Reads what was different in a batch. */
export const batchTold = (fields: FormFields, how: DateReading): Outcome<BatchTold> => {
  const reader = new TypedReader(fields, how);
  return reader.outcome(toldTyped(reader, how));
};

/** The dates of the bags as they are told now; those that were not touched stay as they were come by. */
const datesNow = ({ mix, bagDates = [] }: PouredRecord, told: readonly string[], yard: YardFile): BagDates => {
  const own = bagOf(mix, yard);
  const [before, others] = [
    bagDates.filter(({ material }) => material === own),
    bagDates.filter(({ material }) => material !== own),
  ];
  const isSame = before.map(({ on }) => on).join() === told.join();
  if (isSame || own === null) return bagDates;
  return [...told.map((on) => ({ material: own, on, typed: true as const })), ...others];
};

/** A batch without what anybody told of it: what its work and its taps say stays. */
const untold = (record: PouredRecord) => {
  const { bagDates: _dates, waterLitres: _water, mortarCelsius: _mortar, airCelsius: _air, ...rest } = record;
  const { by: _by, note: _note, ...kept } = rest;
  return kept;
};

const toldNow = (record: PouredRecord, { bagDates: dates = [], ...told }: BatchTold, yard: YardFile): PouredRecord => {
  const bagDates = datesNow(record, dates, yard);
  return { ...untold(record), ...(bagDates.length > 0 ? { bagDates } : {}), ...told };
};

/** Whether two records say the same, in whatever order. */
const saysSame = (a: WorkRecord, b: WorkRecord): boolean =>
  JSON.stringify(workRecord.parse(a)) === JSON.stringify(workRecord.parse(b));

/**
 * What was different in a batch is told later, or told otherwise: all of it anew, so that an empty field says nothing. The
 * plan goes on as it was.
 */
export const tellBatch = (
  context: UseCaseContext,
  key: BatchKey,
  told: BatchTold,
): Promise<Outcome<Changed<{ words: string }>>> =>
  changing(
    context,
    { kind: 'batch told', words: ({ words }) => words },
    async (tx, yard) => {
      const found = (await numberedWorkRecords(tx)).find(({ record }) => isBatch(record, key));
      if (found?.record.kind !== 'poured') return refuse('batch', 'That batch was not poured. Nothing was changed.');
      const record = toldNow(found.record, told, yard);
      if (saysSame(record, found.record)) return refuse('batch', 'It says so already. Nothing was changed.');
      await setWorkRecord(tx, found.id, record);
      return done({
        words: `Told of the batch in ${key.mould}${atWords(record.at, today(yard.yard.timeZone, context.now))}`,
      });
    },
    { carryOn: (plan) => plan },
  );
