/** Sizes of the drawing, in units of the drawing (pixels on a screen). */
export interface SessionSizes {
  width: number;
  /** Left and right of the hours, for a clock time that stands at an edge. */
  side: number;
  /** Above the first lane: the clock times. */
  head: number;
  /** A person's lane, with its words. */
  lane: number;
  /** How tall work is in its lane, and how tall a mix is. */
  work: number;
  mix: number;
  /** From the top of a lane to the line on which work stands. */
  ground: number;
}

/** Work of one lane, in minutes; half-open. */
interface SessionSpell {
  start: number;
  end: number;
  mix: boolean;
}

/** One person: when that one is there, and what they do. */
export interface SessionLane {
  start: number;
  end: number;
  spells: readonly SessionSpell[];
}

interface SpellPlace {
  x: number;
  y: number;
  width: number;
  height: number;
}

export interface SessionGeometry {
  width: number;
  height: number;
  /** Each full hour, by its minute. */
  hours: { minute: number; x: number }[];
  /** `y` is the line on which work stands; spells in the order given. */
  lanes: { x: number; width: number; y: number; spells: SpellPlace[] }[];
  /** Null: the clock stands outside the session. */
  nowX: number | null;
}

const HOUR_MINUTES = 60;

/** Full hours from one minute to another, both included, so far apart that so many of them fit. */
const hoursWithin = (start: number, end: number): number[] => {
  const first = Math.ceil(start / HOUR_MINUTES);
  return Array.from(
    { length: Math.max(0, Math.floor(end / HOUR_MINUTES) - first + 1) },
    (_, hour) => (first + hour) * HOUR_MINUTES,
  );
};

/**
 * Where everything of a session goes that is drawn to time: minutes across, a lane a person down, work standing on the line
 * of its lane. Minutes are counted from midnight of the session's day.
 *
 * Example: a session of 100 minutes, 200 wide without room at the sides: a minute is 2 wide, and work from 10 to 25 stands
 * at 20 and is 30 wide.
 */
export const sessionGeometry = (
  { start, end, now }: { start: number; end: number; now: number | null },
  lanes: readonly SessionLane[],
  sizes: SessionSizes,
): SessionGeometry => {
  const minuteWidth = (sizes.width - 2 * sizes.side) / Math.max(1, end - start);
  const x = (minute: number): number => sizes.side + (Math.min(end, Math.max(start, minute)) - start) * minuteWidth;
  const across = (from: number, to: number) => ({ x: x(from), width: x(to) - x(from) });
  return {
    width: sizes.width,
    height: sizes.head + lanes.length * sizes.lane,
    hours: hoursWithin(start, end).map((minute) => ({ minute, x: x(minute) })),
    lanes: lanes.map((lane, place) => {
      const y = sizes.head + place * sizes.lane + sizes.ground;
      const spells = lane.spells.map((spell) => {
        const height = spell.mix ? sizes.mix : sizes.work;
        return { ...across(spell.start, spell.end), y: y - height, height };
      });
      return { ...across(lane.start, lane.end), y, spells };
    }),
    nowX: now === null || now < start || now > end ? null : x(now),
  };
};
