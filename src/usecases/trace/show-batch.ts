import { type BatchKey, type BatchRecord, isBatch, type PouredRecord } from '../../../shared/batch-record.ts';
import { markKey } from '../../../shared/piece-mark.ts';
import { minuteOf } from '../../../shared/time.ts';
import { bagOf } from '../../engine/book/bag-dates.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { temperatureSaid } from '../../engine/units/temperature.ts';
import { volumeText } from '../../engine/units/volume.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { PageHead } from '../core/page-parts.ts';
import { showMeasures } from '../typed/measures.ts';
import { type BagDateFacts, bagDateFacts, pieceFacts, seePieces, type TracedPieceFacts } from './pieces-seen.ts';

/** What was told of a batch, in the yard's units; null for what nobody said. */
interface BatchToldFacts {
  water: string | null;
  mortarCelsius: string | null;
  airCelsius: string | null;
  by: string | null;
  note: string | null;
}

/** One batch as it really was. */
export interface BatchModel extends PageHead {
  key: BatchKey;
  mix: string;
  bags: number;
  /** When somebody said that it was being mixed; null where nobody did. */
  mixedFrom: string | null;
  /** When its last mould was full; of one that was thrown away, when that was said. */
  at: string;
  thrownAway: boolean;
  bagDates: readonly BagDateFacts[];
  /** The dates of the bags themselves, apart from what else went in. */
  ownDates: readonly string[];
  told: BatchToldFacts;
  /** Where a batch was thrown away, there are none. */
  pieces: readonly TracedPieceFacts[];
  /** Moulds it was for. */
  moulds: readonly string[];
}

const toldFacts = (record: BatchRecord, system: Parameters<typeof volumeText>[1]): BatchToldFacts => {
  const told: Partial<PouredRecord> = record.kind === 'poured' ? record : {};
  const { waterLitres, mortarCelsius, airCelsius, by = null, note = null } = told;
  const celsius = (one: number | undefined) => (one === undefined ? null : temperatureSaid(one, system));
  const water = waterLitres === undefined ? null : volumeText(waterLitres, system);
  return { water, mortarCelsius: celsius(mortarCelsius), airCelsius: celsius(airCelsius), by, note };
};

/** A batch with what was told of it and what became of its pieces; null where none such was recorded. */
export const showBatch = async (context: UseCaseContext, key: BatchKey): Promise<BatchModel | null> => {
  const seen = await seePieces(context);
  const { yard, records, ledger } = seen;
  const record = records.find((one): one is BatchRecord => isBatch(one, key));
  if (!record) return null;
  const { instantText } = calendarOf(yard.yard.timeZone);
  const shown = (instant: string) => instantText(minuteOf(instant));
  const own = bagOf(record.mix, yard);
  const marks = new Set(record.kind === 'poured' ? record.pours.map(markKey) : []);
  const mixedFrom = record.kind === 'poured' ? record.mixedFrom : undefined;
  return {
    ...{ yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now), key },
    mix: yard.mixes.find(({ id }) => id === record.mix)?.name ?? record.mix,
    ...{ bags: record.bags, at: shown(record.at), thrownAway: record.kind === 'thrown away' },
    mixedFrom: mixedFrom === undefined ? null : shown(mixedFrom),
    bagDates: bagDateFacts(yard, record),
    ownDates: (record.bagDates ?? []).flatMap(({ material, on }) => (material === own ? [on] : [])),
    told: toldFacts(record, (await showMeasures(context)).system),
    pieces: ledger.filter((piece) => marks.has(markKey(piece))).map((piece) => pieceFacts(seen, piece)),
    moulds: record.pours.map(({ mould }) => mould),
  };
};
