import { DAY_NAMES } from '../../shared/day-names.ts';
import { listText } from '../../shared/list-text.ts';
import { countText } from '../../shared/plural.ts';
import type { FitModel, FittedTime, FittedTimes } from '../../src/usecases/begin/fit-times.ts';
import type { BeginModel } from '../../src/usecases/begin/show-begin.ts';

export const BEGIN = '/begin';
export const FOUR = '/begin/four';
export const EMPTY_YARD = '/begin/empty';
export const FIT = '/begin/session';

type Usual = NonNullable<FitModel['usual']>;

/** "a Saturday makes 11 panels in 3 turns" */
export const makesText = ({ weekday, pieces, turns }: Usual): string =>
  `a ${DAY_NAMES[weekday]} makes ${countText(pieces, 'panel')} in ${countText(turns, 'turn')}`;

/** The first line before anything was typed: what a usual session makes by the yard's figures. */
export const usualAnswer = ({ usual }: FitModel): string => {
  if (!usual) return 'No session makes anything yet.';
  if (usual.pieces === 0) return `By these figures a ${DAY_NAMES[usual.weekday]} makes nothing.`;
  return `By these figures ${makesText(usual)}.`;
};

export const lastOneText = ({ weekday }: Usual): string => `How many panels did your last ${DAY_NAMES[weekday]} make?`;

/** The first line with a number: what the times that come nearest to it make. */
export const fittedAnswer = ({ asked, makes, same }: FittedTimes): string => {
  const day = DAY_NAMES[makes.weekday];
  if (makes.pieces !== asked) return `A ${day} can't make ${asked}: ${makes.pieces} is the nearest.`;
  return same ? `By these figures ${makesText(makes)} already.` : `With these times ${makesText(makes)}.`;
};

/** Why it is not as many as was typed, or what comes next. */
export const fittedNote = ({ asked, makes, heldBy, same }: FittedTimes): string => {
  if (heldBy === 'moulds')
    return 'However quick the work, it is held up by the moulds you have: a piece stays in its mould until it can be stripped.';
  if (heldBy === 'hours')
    return 'However quick the work, it is held up by the hours: each mix takes its time, more moulds or not.';
  if (makes.pieces !== asked) return 'All times together slower or quicker never come to just that number.';
  if (same) return 'Nothing has to be changed. The times stay figures to check until you say that they are right.';
  return 'All times of handling are changed by one measure. They stay figures to check until you say that they are right.';
};

const TIME_WORDS: Readonly<Record<FittedTime['what'], string>> = {
  ...{
    setUp: 'Set up a mould',
    clean: 'Clean a mould',
    fill: 'Fill a mould',
    strip: 'Strip a panel',
    mix: 'Mix a batch',
  },
};

export const timeWord = ({ what }: FittedTime): string => TIME_WORDS[what];

/** "10 to 14" for the lengths of a yard, "8" where all are alike. */
export const rangeText = (minutes: readonly number[]): string => {
  const [least, most] = [Math.min(...minutes), Math.max(...minutes)];
  return least === most ? String(least) : `${least} to ${most}`;
};

/** "12 moulds, 5 kits and 3 open orders" */
export const thereText = ({ moulds, kits, orders }: BeginModel['there']): string => {
  const counted = [
    ...(moulds > 0 ? [countText(moulds, 'mould')] : []),
    ...(kits > 0 ? [countText(kits, 'kit')] : []),
    ...(orders > 0 ? [countText(orders, 'open order')] : []),
  ];
  return counted.length > 0 ? listText(counted) : 'an empty yard';
};
