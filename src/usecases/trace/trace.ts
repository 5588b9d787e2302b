import { type BatchRecord, hasBagDate, isBatch } from '../../../shared/batch-record.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import type { TraceAsked } from '../typed/trace-form.ts';
import type { TracedPiece } from './piece-ledger.ts';

/** What was found. */
export interface Traced {
  pieces: readonly TracedPiece[];
  /** Batches of those bags that were thrown away; none where it was not asked for bags. */
  thrown: number;
  /** Orders with pieces of such kinds of which nobody knows the mark, packed since: they may have some of these. */
  perhaps: readonly { order: string; count: number }[];
  /** Batches of the same mix of which nobody knows the bag date. */
  undated: number;
}

type DayOf = (instant: string) => string;

/** All that is recorded, and what of an order went out before the rest as an order of its own. */
interface Recorded {
  ledger: readonly TracedPiece[];
  records: readonly WorkRecord[];
  dayOf: DayOf;
  parts: readonly string[];
}

const isOf = (piece: TracedPiece, asked: TraceAsked, { dayOf, parts }: Recorded): boolean => {
  if (asked.by === 'order') return piece.order === asked.order || (piece.order !== null && parts.includes(piece.order));
  if (asked.by === 'bag') return piece.batch !== null && hasBagDate(piece.batch, asked.on, asked.material);
  const day = dayOf(piece.filledAt);
  return (
    piece.mould === asked.mould &&
    (asked.from === null || day >= asked.from) &&
    (asked.until === null || day <= asked.until)
  );
};

/** What each order holds by its last packing, of which nobody knows the mark. */
const unmarkedPacked = (records: readonly WorkRecord[]) => {
  const packed = new Map<string, Extract<WorkRecord, { kind: 'packed' }>>();
  for (const record of records) {
    if (record.kind === 'packed') packed.set(record.order, record);
    if (record.kind === 'unpacked') packed.delete(record.order);
  }
  return [...packed.values()].filter(({ others }) => others.length > 0);
};

const perhapsIn = (records: readonly WorkRecord[], asked: TraceAsked, pieces: readonly TracedPiece[]) => {
  const first = Math.min(...pieces.map(({ filledAt }) => Date.parse(filledAt)));
  const castings = new Set(pieces.map(({ casting }) => casting));
  return unmarkedPacked(records).flatMap(({ order, at, others }) => {
    const isKind = (casting: string) => asked.by === 'order' || castings.has(casting);
    const count = others.reduce((sum, one) => sum + (isKind(one.casting) ? one.count : 0), 0);
    const isMeant = asked.by === 'order' ? order === asked.order : Date.parse(at) >= first;
    return isMeant && count > 0 ? [{ order, count }] : [];
  });
};

const undatedIn = (batches: readonly BatchRecord[], asked: TraceAsked): number => {
  if (asked.by !== 'bag') return 0;
  const mixes = new Set(batches.filter((one) => hasBagDate(one, asked.on, asked.material)).map(({ mix }) => mix));
  const isDated = ({ bagDates = [] }: BatchRecord) =>
    bagDates.some(({ material }) => asked.material === null || material === asked.material);
  return batches.filter((one) => mixes.has(one.mix) && !isDated(one)).length;
};

/**
 * The pieces that are asked for, in the order in which they were poured, and what is not known and may be of them too.
 * `dayOf` is the date of an instant in the yard.
 */
export const trace = (recorded: Recorded, asked: TraceAsked): Traced => {
  const { ledger, records } = recorded;
  const pieces = ledger.filter((piece) => isOf(piece, asked, recorded));
  const batches = records.filter((record) => isBatch(record));
  const isThrown = (one: BatchRecord) =>
    asked.by === 'bag' && one.kind === 'thrown away' && hasBagDate(one, asked.on, asked.material);
  return {
    pieces,
    thrown: batches.filter(isThrown).length,
    perhaps: perhapsIn(records, asked, pieces),
    undated: undatedIn(batches, asked),
  };
};
