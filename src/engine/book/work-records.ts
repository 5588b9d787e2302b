import { minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { bagDatesOf, type Deliveries } from './bag-dates.ts';
import { curingTimesOf, pieceMayBeStripped } from './curing-times.ts';
import type { Entry } from './entry.ts';
import type { MarkDetails, MouldMark } from './mark.ts';
import { bagsPoured } from './pour.ts';
import type { PourWork, StripWork, WorkDone } from './work-done.ts';

/** What a batch came to in the stock book, and what came of each material: of these its bags are known. */
export interface BagsKnown {
  entries: readonly Entry[];
  deliveries: Deliveries;
}

const batchOf = (work: PourWork, yard: YardFile, { entries, deliveries }: BagsKnown, at: string) => {
  const mixed = bagsPoured(work, yard);
  if (!mixed) return null;
  const dates = bagDatesOf(work, yard, deliveries, entries);
  const pours = work.pours.map(({ mould, casting, filledAt, order }) => ({
    ...{ mould, casting, filledAt },
    ...(order === null ? {} : { order }),
  }));
  const bagDates = dates.length > 0 ? { bagDates: dates } : {};
  return { at, mix: mixed.mix.id, bags: mixed.bags, pours, ...bagDates };
};

/** A batch that was thrown away just now, with the moulds it was for. None where its pieces are of no one mix. */
export const thrownRecords = (work: PourWork, yard: YardFile, known: BagsKnown): WorkRecord[] => {
  const batch = batchOf(work, yard, known, yard.yard.now);
  return batch ? [{ kind: 'thrown away', ...batch }] : [];
};

const pouredRecords = (work: PourWork, yard: YardFile, known: BagsKnown): WorkRecord[] => {
  const batch = batchOf(work, yard, known, work.pours.at(-1)!.filledAt);
  const { bagDates: _dates, ...told } = work.told ?? {};
  const { mixedFrom, mixedAt, tappedAt } = work;
  const times = {
    ...(mixedFrom === undefined ? {} : { mixedFrom }),
    ...(mixedAt === undefined ? {} : { mixedAt }),
    ...(tappedAt === undefined ? {} : { tappedAt }),
  };
  return batch ? [{ kind: 'poured', ...batch, ...told, ...times }] : [];
};

const coated = (mould: string, at: string): WorkRecord => ({ kind: 'coated', at, mould });

const strippedRecords = ({ mould, cameOut, reason, doneAt, timed }: StripWork, yard: YardFile): WorkRecord[] => {
  const piece = yard.inMould.find((one) => one.mould === mould);
  if (!piece) return [];
  const { casting, filledAt } = piece;
  const why = cameOut === 'good' || reason === '' ? {} : { reason };
  const may = pieceMayBeStripped(piece, curingTimesOf(yard));
  // What came out by its time says nothing of when it was hard.
  const early = minuteOf(doneAt) < may ? { mayFrom: calendarOf(yard.yard.timeZone).instantText(may) } : {};
  return [{ kind: 'stripped', at: doneAt, mould, casting, filledAt, cameOut, ...why, ...early, ...timed }];
};

const NOTHING_KNOWN: BagsKnown = { entries: [], deliveries: new Map() };

/** What work comes to in the record of all that was done; `yard` as it was before. A packing: see `packedRecords`. */
export const recordsOfWork = (work: WorkDone, yard: YardFile, known: BagsKnown = NOTHING_KNOWN): WorkRecord[] => {
  switch (work.kind) {
    case 'poured':
      return [
        ...work.pours.flatMap((one) => (one.coated ? [coated(one.mould, one.filledAt)] : [])),
        ...pouredRecords(work, yard, known),
      ];
    case 'stripped':
      return strippedRecords(work, yard);
    case 'coated':
      return [coated(work.mould, work.doneAt)];
    case 'set up':
      return [
        ...(work.coated ? [coated(work.mould, work.doneAt)] : []),
        { kind: 'set up', at: work.doneAt, mould: work.mould, casting: work.casting, ...work.timed },
      ];
    case 'packed':
      return [];
  }
};

/** A piece that is in a mould which goes out of use may be lost with it; `note` is why. */
export const lostRecords = (
  mould: string,
  { note, cameOut }: Pick<MarkDetails, 'note' | 'cameOut'>,
  yard: YardFile,
): WorkRecord[] =>
  cameOut === null || cameOut === 'good'
    ? []
    : strippedRecords({ mould, cameOut, reason: note, doneAt: yard.yard.now }, yard);

/** What a mark comes to in the record. */
export const recordsOfMark = (mould: string, mark: MouldMark, details: MarkDetails, yard: YardFile): WorkRecord[] => {
  const at = yard.yard.now;
  if (mark === 'sealed') return [coated(mould, at)];
  const { note } = details;
  return [
    ...lostRecords(mould, details, yard),
    { kind: 'marked', at, mould, mark, ...(note === '' ? {} : { reason: note }) },
  ];
};
