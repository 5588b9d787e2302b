import type { Mould } from '../../../shared/mould.ts';
import type { CameOut } from '../../../shared/piece-to-mend.ts';
import { thereIsNo } from '../../../shared/said-back.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { type Booked, booked, type Entry, type MouldPatch, refused } from './entry.ts';
import { isOut, isRetired, MENDED } from './mould-state.ts';
import { putPiece } from './strip.ts';
import { todayIn } from './today-in.ts';

/** What a maker can say about a mould. */
export const MOULD_MARKS = ['cleaned', 'damaged', 'mended', 'sealed', 'scrapped', 'serviced'] as const;
/** One of the things that can be said. */
export type MouldMark = (typeof MOULD_MARKS)[number];

/** What a mark may come with: all of it is about damage, or about the piece that is in the mould just now. */
export interface MarkDetails {
  note: string;
  /** The day it is expected to be mended; null when nobody knows. */
  repairedOn: string | null;
  /** What the piece in it is; null when the mould is empty or nobody said. */
  cameOut: CameOut | null;
}

interface Marking {
  yard: YardFile;
  mould: Mould;
  details: MarkDetails;
}

const patch = ({ mould }: Marking, change: MouldPatch): Booked =>
  booked([{ kind: 'mould', mould: mould.id, patch: { ...change, prepped: false } }]);

const pieceIn = ({ yard, mould }: Marking) => yard.inMould.find((piece) => piece.mould === mould.id);

const full = (marking: Marking, what: string): Booked | null =>
  pieceIn(marking)
    ? refused('mark', `${marking.mould.id} has a piece in it. Strip it first, then it can be ${what}.`)
    : null;

/**
 * The piece in a mould that goes out of use: asked for, since another has to be poured for one that is not good. A good
 * one stays in until it is stripped.
 */
const settlePiece = (marking: Marking): Booked => {
  const { yard, mould, details } = marking;
  const piece = pieceIn(marking);
  const { cameOut } = details;
  if (!piece) return booked([]);
  if (cameOut === null) return refused('cameOut', `Say whether the piece in ${mould.id} is good.`);
  if (cameOut === 'good') return booked([]);
  const put = putPiece(yard, piece, { cameOut, reason: '', doneAt: yard.yard.now });
  return booked([{ kind: 'emptied', mould: mould.id }, ...put]);
};

/** A mould that goes out of use, once what is in it is settled. */
const outOfUse = (marking: Marking, change: MouldPatch): Booked => {
  const settled = settlePiece(marking);
  if (!settled.ok) return settled;
  const out: Entry = { kind: 'mould', mould: marking.mould.id, patch: { ...change, prepped: false } };
  return booked([...settled.entries, out]);
};

const cleaned = (marking: Marking): Booked => {
  const { mould } = marking;
  const holds = full(marking, 'cleaned');
  if (holds) return holds;
  if (mould.condition !== 'dirty')
    return refused('mark', `${mould.id} was not waiting to be cleaned. Nothing was changed.`);
  return patch(marking, { condition: 'ready' });
};

const dryAt = ({ yard, mould }: Marking): string =>
  calendarOf(yard.yard.timeZone).instantText(minuteOf(yard.yard.now) + mould.oilDryMinutes);

/** A mould is clean and empty when it is sealed, so a dirty one comes out clean. It dries from now on. */
const sealed = (marking: Marking): Booked => {
  const { mould } = marking;
  const holds = full(marking, 'sealed');
  if (holds) return holds;
  if (isRetired(mould)) return refused('mark', `${mould.id} is scrapped. Mark it mended first.`);
  const dryFrom = mould.oilDryMinutes > 0 ? { dryFrom: dryAt(marking) } : {};
  return patch(marking, {
    ...{ turnsSinceOil: 0, ...dryFrom },
    ...(mould.condition === 'dirty' ? { condition: 'ready' } : {}),
  });
};

const damaged = (marking: Marking): Booked => {
  const { yard, details } = marking;
  if (details.repairedOn && details.repairedOn < todayIn(yard))
    return refused('repairedOn', 'That day has passed. Leave it empty when nobody knows.');
  const { repairedOn, note } = details;
  return outOfUse(marking, { condition: 'damaged', repairedOn, damageNote: note || null });
};

const mended = (marking: Marking): Booked => {
  if (!isOut(marking.mould)) return refused('mark', `${marking.mould.id} was not out of use. Nothing was changed.`);
  return patch(marking, { condition: 'ready', ...MENDED });
};

/** What was written down when it was damaged stays, unless there is more to say. */
const scrapped = (marking: Marking): Booked => {
  const { note } = marking.details;
  return outOfUse(marking, { condition: 'retired', repairedOn: null, ...(note ? { damageNote: note } : {}) });
};

/** Looked over and put right: it is as it was, and its turns are counted from now on. */
const serviced = (marking: Marking): Booked => full(marking, 'looked over') ?? booked([]);

const MARKS: Record<MouldMark, (marking: Marking) => Booked> = {
  ...{ cleaned, damaged, mended, sealed, scrapped, serviced },
};

/**
 * What the maker says became of a mould. Refused at `mark`, `repairedOn` (a day before today) or `cameOut` (it goes out of
 * use with a piece in it, and nobody said whether that is good).
 */
export const mark = (yard: YardFile, id: string, what: MouldMark, details: MarkDetails): Booked => {
  const mould = yard.moulds.find((one) => one.id === id);
  return mould ? MARKS[what]({ yard, mould, details }) : refused('mark', thereIsNo('mould', id));
};
