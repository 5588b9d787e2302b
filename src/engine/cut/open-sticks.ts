import type { Minute } from '../../../shared/time.ts';

/** Cuts of one kind for one batch or order, needed at an instant. `room` is the length and a kerf, mm. */
export interface TimedCut {
  kind: number;
  lengthMm: number;
  room: number;
  count: number;
  at: Minute;
  for: string;
}

/**
 * A stick and what is cut from it; it is there from the minute at which it is opened. Lengths in mm, without the kerf. With
 * `offcutMm` it is an offcut of that length and no whole stick.
 */
export interface OpenedStick {
  openedAt: Minute;
  offcutMm?: number;
  cuts: { lengthMm: number; count: number; for: string }[];
}

/** A stick that has been opened, with the room left on it, mm. */
export interface OpenStick extends OpenedStick {
  left: number;
}

const ROOM_TOLERANCE = 1e-7;

/** A new stick, with all its room left: `openStick(0, 3003)` has room for 3003 mm. */
export const openStick = (at: Minute, room: number): OpenStick => ({ openedAt: at, cuts: [], left: room });

/** Offcuts of these lengths, with all their room left: `offcutSticks([500], 3)` is one with room for 503 mm. */
export const offcutSticks = (lengthsMm: readonly number[], kerfMm: number): OpenStick[] =>
  lengthsMm.map((offcutMm) => ({ ...openStick(0, offcutMm + kerfMm), offcutMm }));

/**
 * Writes cuts down on a stick; its room is the caller's to keep. Cuts of one length for one batch stand together: two of
 * 190 for B1, and two more, are four of 190 for B1. The first cut opens it.
 */
export const cutFrom = (stick: OpenedStick, cut: TimedCut, count: number): void => {
  if (stick.cuts.length === 0) stick.openedAt = cut.at;
  const same = stick.cuts.find((x) => x.lengthMm === cut.lengthMm && x.for === cut.for);
  if (same) same.count += count;
  else stick.cuts.push({ lengthMm: cut.lengthMm, count, for: cut.for });
};

const tightest = (sticks: OpenStick[], room: number): OpenStick | undefined => {
  let best: OpenStick | undefined;
  for (const stick of sticks)
    if (stick.left + ROOM_TOLERANCE >= room && (!best || stick.left < best.left)) best = stick;
  return best;
};

/**
 * Cuts in the order given, by time: each from the offcut or opened stick it leaves the least on, from a new one where none
 * has the room. This is what somebody does who takes cuts as they come; it opens a stick as late as can be. Room and capacity in mm,
 * with the kerf added.
 *
 * Example: room for 10 a stick, cuts of 6, 5, 4, 5 in this order: {6, 4} and {5, 5}, `cutAsTheyCome([6, 5, 4,
 * 5].map((room) => ({ room, lengthMm: room, count: 1 })), 10).length` is 2.
 */
export const cutAsTheyCome = (cuts: TimedCut[], capacity: number, offcuts: readonly OpenStick[] = []): OpenStick[] => {
  const least = cuts.reduce((min, x) => Math.min(min, x.room), Number.POSITIVE_INFINITY);
  const sticks: OpenStick[] = [...offcuts];
  let usable = [...offcuts];
  for (const cut of cuts) {
    for (let left = cut.count; left > 0; ) {
      let stick = tightest(usable, cut.room);
      if (!stick) {
        stick = openStick(cut.at, capacity);
        sticks.push(stick);
        usable.push(stick);
      }
      const count = Math.max(1, Math.min(left, Math.floor((stick.left + ROOM_TOLERANCE) / cut.room)));
      cutFrom(stick, cut, count);
      stick.left -= count * cut.room;
      left -= count;
      if (stick.left + ROOM_TOLERANCE < least) usable = usable.filter((x) => x !== stick);
    }
  }
  return sticks.filter((x) => x.cuts.length > 0);
};
