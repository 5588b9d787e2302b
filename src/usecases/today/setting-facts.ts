import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { curingTimesOf, pieceMayBeStripped } from '../../engine/book/curing-times.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { coveredName } from './cover-pieces.ts';
import { pieceKeyOf } from './session-step.ts';
import type { SettingFacts } from './today-model.ts';

/** Nobody waits for a clock that is further off. */
const LONGEST_MINUTES = 12 * 60;

/** For how long somebody keeps a piece of a casting wet. */
const attendMinutes = ({ castings, mixes }: YardFile, casting: string): number => {
  const mix = castings.find(({ id }) => id === casting)?.mix;
  return mixes.find(({ id }) => id === mix)?.attendMinutes ?? 0;
};

const coverOf = (pieceKey: string, covered: ReadonlyMap<string, Minute>, text: (at: Minute) => string) => {
  const at = covered.get(coveredName(pieceKey));
  return { pieceKey, coveredAt: at === undefined ? null : text(at) };
};

/** The names under which it is kept since when pieces in moulds are covered. */
export const coveredNames = ({ inMould }: YardFile): string[] =>
  inMould.map(({ mould, filledAt }) => coveredName(pieceKeyOf(mould, minuteOf(filledAt))));

/** Pieces that set as recorded, each with what is still to come of it in the next hours, what comes next first. */
export const settingFacts = (yard: YardFile, now: Minute, covered: ReadonlyMap<string, Minute>): SettingFacts[] => {
  const { instantText } = calendarOf(yard.yard.timeZone);
  const curing = curingTimesOf(yard);
  const ahead = (minute: Minute) => (minute > now && minute <= now + LONGEST_MINUTES ? minute : null);
  return yard.inMould
    .map((piece) => ({
      piece,
      wet: ahead(minuteOf(piece.filledAt) + attendMinutes(yard, piece.casting)),
      may: ahead(pieceMayBeStripped(piece, curing)),
    }))
    .filter(({ wet, may }) => wet !== null || may !== null)
    .sort((a, b) => (a.wet ?? a.may ?? 0) - (b.wet ?? b.may ?? 0) || (a.may ?? 0) - (b.may ?? 0))
    .map(({ piece: { mould, casting, filledAt }, wet, may }) => ({
      ...coverOf(pieceKeyOf(mould, minuteOf(filledAt)), covered, instantText),
      mould,
      piece: yard.castings.find(({ id }) => id === casting)?.name ?? casting,
      wetUntil: wet === null ? null : instantText(wet),
      mayFrom: may === null ? null : instantText(may),
    }));
};
