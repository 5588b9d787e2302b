import { rounded } from './rounded.ts';

/** Sizes of the drawing, in units of the drawing (pixels on a screen). */
export interface DateTrackSizes {
  width: number;
  /** Left and right, for a mark that stands at an edge. */
  side: number;
}

/** Days of an order, counted from any day; null where there is none. */
export interface TrackDays {
  today: number;
  /** By the plan. */
  ready: number | null;
  /** Promised, or wanted. */
  due: number | null;
}

/** From one place to another, from left to right. */
interface Stretch {
  from: number;
  to: number;
}

export interface DateTrack {
  todayX: number;
  readyX: number | null;
  dueX: number | null;
  /** Time that the work takes: from today until it is ready, at most up to the day it is due. */
  work: Stretch | null;
  /** Time in hand: from ready to due. */
  spare: Stretch | null;
  /** From the day it is due to the day it is ready. */
  late: Stretch | null;
}

/** Nothing where it would have no length. */
const stretch = (from: number, to: number): Stretch | null => (to > from ? { from, to } : null);

/**
 * Where the days of an order stand on a line that several orders share: from the first of all their days to the last.
 *
 * Example: today 0, ready 5, due 10 on a line from 0 to 10, 100 long without room at the sides: ready stands at 50, and from
 * there to 100 is to spare.
 */
export const dateTrack = (
  { today, ready, due }: TrackDays,
  { first, last }: { first: number; last: number },
  { width, side }: DateTrackSizes,
): DateTrack => {
  const days = Math.max(1, last - first);
  const xOf = (day: number): number =>
    rounded(side + ((Math.min(last, Math.max(first, day)) - first) / days) * (width - 2 * side));
  const [todayX, readyX, dueX] = [xOf(today), ready === null ? null : xOf(ready), due === null ? null : xOf(due)];
  const isLate = ready !== null && due !== null && ready > due;
  return {
    ...{ todayX, readyX, dueX },
    work: readyX === null ? null : stretch(todayX, isLate ? Math.max(todayX, dueX!) : readyX),
    spare: readyX === null || dueX === null ? null : stretch(Math.max(todayX, readyX), dueX),
    late: isLate ? stretch(dueX!, readyX!) : null,
  };
};

/** The line that the days of several orders share; it begins today or earlier, and is a week long at least. */
export const trackSpan = (all: readonly TrackDays[]): { first: number; last: number } => {
  const days = all.flatMap(({ today, ready, due }) => [
    today,
    ...(ready === null ? [] : [ready]),
    ...(due === null ? [] : [due]),
  ]);
  const first = Math.min(...days);
  return { first, last: Math.max(first + 7, ...days) };
};
