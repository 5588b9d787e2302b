import { type BatchKey, batchKey } from '../../../shared/batch-record.ts';
import type { PartCondition } from '../../../shared/mould-part.ts';
import type { CameOut } from '../../../shared/piece-to-mend.ts';
import { minuteOf } from '../../../shared/time.ts';
import { mouldsOfRecord, type WorkRecord } from '../../../shared/work-record.ts';
import { wilson } from '../../engine/odds/wilson.ts';
import type { Counted } from '../core/page-parts.ts';

type Happened =
  | { kind: 'poured'; at: string; casting: string; order: string | null; batch: BatchKey }
  | { kind: 'thrown away'; at: string; casting: string; batch: BatchKey }
  | {
      kind: 'stripped' | 'after mending';
      at: string;
      casting: string;
      filledAt: string;
      cameOut: CameOut;
      reason: string | null;
    }
  | { kind: 'not hard'; at: string; casting: string }
  | { kind: 'coated'; at: string }
  | { kind: 'cleaned' | 'damaged' | 'mended' | 'scrapped' | 'serviced'; at: string; reason: string | null }
  | { kind: 'part'; at: string; part: string; condition: PartCondition; reason: string | null };

/** One thing in the history of a mould, and by whom; null where no name was chosen on the device. */
export type HistoryEntry = Happened & { by: string | null };

/** How many of so many pieces were scrapped in the end. */
interface Share {
  scrapped: number;
  of: number;
}

/** What a mould has been through, as far as it was recorded. */
export interface MouldHistory {
  /** Pieces that came out of it. */
  turns: number;
  scrapped: number;
  /** Those of all other moulds. */
  others: Share;
  /** Its share of scrapped pieces is another than that of the others: theirs lies outside its 95 % interval. */
  differs: 'more' | 'fewer' | null;
  /** Why pieces were scrapped or had to be mended, the most frequent first. */
  reasons: readonly Counted[];
  coats: number;
  /** Whole days out of use, up to now. */
  daysOut: number;
  /** The newest first. */
  entries: readonly HistoryEntry[];
}

type OfPiece = Extract<WorkRecord, { kind: 'stripped' | 'after mending' }>;

const isOfPiece = (record: WorkRecord): record is OfPiece =>
  record.kind === 'stripped' || record.kind === 'after mending';

const pieceKey = ({ mould, filledAt }: OfPiece): string => `${minuteOf(filledAt)} ${mould}`;

/** Pieces that came out, each with the last that was said of it. */
const piecesOut = (records: readonly WorkRecord[]): OfPiece[] => [
  ...new Map(records.filter(isOfPiece).map((record) => [pieceKey(record), record])).values(),
];

const shareOf = (pieces: readonly OfPiece[]): Share => ({
  scrapped: pieces.filter(({ cameOut }) => cameOut === 'scrap').length,
  of: pieces.length,
});

/** Whether one share is another than a second one, as far as so few cases can tell. */
const differsFrom = (own: Share, others: Share): MouldHistory['differs'] => {
  if (own.of === 0 || others.of === 0) return null;
  const [{ from, to }, share] = [wilson(own.scrapped, own.of), others.scrapped / others.of];
  if (share < from) return 'more';
  return share > to ? 'fewer' : null;
};

const reasonsOf = (records: readonly WorkRecord[]): Counted[] => {
  const counts = new Map<string, number>();
  for (const record of records)
    if (record.kind === 'stripped' && record.reason) counts.set(record.reason, (counts.get(record.reason) ?? 0) + 1);
  return [...counts].map(([name, count]) => ({ name, count })).sort((a, b) => b.count - a.count);
};

const DAY_MINUTES = 1440;

/** From each time it went out of use until it was mended; until now where it was not. */
const daysOut = (records: readonly WorkRecord[], now: string): number => {
  let [minutes, since] = [0, null as number | null];
  for (const record of records) {
    if (record.kind !== 'marked' && record.kind !== 'part') continue;
    if (record.mark === 'damaged' || record.mark === 'scrapped') since ??= minuteOf(record.at);
    if (record.mark === 'mended' && since !== null) {
      minutes += minuteOf(record.at) - since;
      since = null;
    }
  }
  const open = since === null ? 0 : Math.max(0, minuteOf(now) - since);
  return Math.floor((minutes + open) / DAY_MINUTES);
};

const happened = (record: WorkRecord, mould: string): Happened[] => {
  switch (record.kind) {
    case 'poured':
      return record.pours
        .filter((pour) => pour.mould === mould)
        .map(({ casting, filledAt, order = null }) => ({
          ...{ kind: 'poured' as const, at: filledAt, casting, order, batch: batchKey(record) },
        }));
    case 'thrown away':
      return record.pours
        .filter((pour) => pour.mould === mould)
        .map(({ casting }) => ({ kind: 'thrown away', at: record.at, casting, batch: batchKey(record) }));
    case 'coated':
      return [{ kind: 'coated', at: record.at }];
    case 'marked':
      return [{ kind: record.mark, at: record.at, reason: record.reason ?? null }];
    case 'part': {
      const { at, part, condition, reason = null } = record;
      return [{ kind: 'part', at, part, condition, reason }];
    }
    case 'not hard':
      return [{ kind: 'not hard', at: record.at, casting: record.casting }];
    case 'photo':
    case 'photo removed':
    case 'mixing begun':
    case 'mixed':
    case 'set up':
    case 'packed':
    case 'unpacked':
      return [];
    default: {
      const { kind, at, casting, filledAt, cameOut, reason = null } = record;
      return [{ kind, at, casting, filledAt, cameOut, reason }];
    }
  }
};

/** Who mixed is told of a batch by itself. */
const whoseDoing = (record: WorkRecord): string | null =>
  (record.kind === 'poured' ? record.by : undefined) ?? record.doneBy ?? null;

const entriesOf = (record: WorkRecord, mould: string): HistoryEntry[] =>
  happened(record, mould).map((entry) => ({ ...entry, by: whoseDoing(record) }));

/**
 * The history of one mould, from all that was recorded of all moulds. Work that was told of later stands where it was
 * done.
 */
export const mouldHistory = (records: readonly WorkRecord[], mould: string, now: string): MouldHistory => {
  const own = records.filter((record) => mouldsOfRecord(record).includes(mould));
  const pieces = piecesOut(records);
  const [mine, others] = [
    pieces.filter((piece) => piece.mould === mould),
    pieces.filter((piece) => piece.mould !== mould),
  ];
  const share = shareOf(mine);
  return {
    ...{ turns: share.of, scrapped: share.scrapped, others: shareOf(others) },
    differs: differsFrom(share, shareOf(others)),
    reasons: reasonsOf(own),
    coats: own.filter(({ kind }) => kind === 'coated').length,
    daysOut: daysOut(own, now),
    entries: own
      .flatMap((record) => entriesOf(record, mould))
      .map((entry, place) => ({ entry, place }))
      .sort((a, b) => minuteOf(b.entry.at) - minuteOf(a.entry.at) || b.place - a.place)
      .map(({ entry }) => entry),
  };
};

/** How often each mould was stripped since it was looked over last; those that never were have no entry. */
export const turnsSinceService = (records: readonly WorkRecord[]): ReadonlyMap<string, number> => {
  const turns = new Map<string, number>();
  for (const record of records) {
    if (record.kind === 'stripped') turns.set(record.mould, (turns.get(record.mould) ?? 0) + 1);
    if (record.kind === 'marked' && record.mark === 'serviced') turns.set(record.mould, 0);
  }
  return turns;
};
