/** Hours of one day, in minutes of its clock; half-open. */
export interface WeekHours {
  start: number;
  end: number;
  people: number;
}

/** Sizes of the drawing, in units of the drawing (pixels on a screen). */
export interface WeekSizes {
  width: number;
  /** At the left, for the names of the days. */
  left: number;
  /** Above the first day, for the hours of the clock. */
  head: number;
  /** One person, and between two days. */
  person: number;
  gap: number;
}

export interface WeekGeometry {
  width: number;
  height: number;
  /** Each second full hour, by its minute. */
  clock: { minute: number; x: number }[];
  /** `bars` in the order of the hours given; a day without hours is as tall as one person. */
  days: { y: number; height: number; bars: { x: number; y: number; width: number; height: number }[] }[];
}

const HOUR = 60;
const CLOCK_HOURS = 2;

/** The lowest place from which so many lanes are free of what is there at the same time. */
const placeFor = (hours: WeekHours, placed: readonly { hours: WeekHours; lane: number }[]): number => {
  const others = placed.filter((one) => one.hours.start < hours.end && hours.start < one.hours.end);
  const isFree = (lane: number) =>
    others.every((one) => lane + hours.people <= one.lane || one.lane + one.hours.people <= lane);
  let lane = 0;
  while (!isFree(lane)) lane += 1;
  return lane;
};

/**
 * A week of hours: days down, the clock across, from the first hour to the last that anybody is there. People who are there at
 * once stand on each other.
 *
 * Example: one day, 8:00 to 10:00 and 9:00 to 10:00 by one person each, 100 wide, persons 10 tall: bars from 0, 100 wide,
 * at the ground, and from 50, 50 wide, above it.
 */
export const weekGeometry = (days: readonly (readonly WeekHours[])[], sizes: WeekSizes): WeekGeometry => {
  const all = days.flat();
  const first = Math.floor(Math.min(...all.map(({ start }) => start), 24 * HOUR) / HOUR) * HOUR;
  const last = Math.max(first + HOUR, Math.ceil(Math.max(...all.map(({ end }) => end), 0) / HOUR) * HOUR);
  const xOf = (minute: number) =>
    Number((sizes.left + ((minute - first) / (last - first)) * (sizes.width - sizes.left)).toFixed(1));
  let y = sizes.head;
  const drawn = days.map((hours) => {
    const placed: { hours: WeekHours; lane: number }[] = [];
    for (const one of hours) placed.push({ hours: one, lane: placeFor(one, placed) });
    const people = Math.max(1, ...placed.map((one) => one.lane + one.hours.people));
    const [top, height] = [y, people * sizes.person];
    y += height + sizes.gap;
    return {
      ...{ y: top, height },
      bars: placed.map(({ hours: { start, end, people: own }, lane }) => ({
        ...{ x: xOf(start), width: Number((xOf(end) - xOf(start)).toFixed(1)) },
        ...{ y: top + height - (lane + own) * sizes.person, height: own * sizes.person },
      })),
    };
  });
  const clocks = Math.floor((last - first) / (CLOCK_HOURS * HOUR)) + 1;
  return {
    ...{ width: sizes.width, height: y - sizes.gap, days: drawn },
    clock: Array.from({ length: clocks }, (_, at) => {
      const minute = first + at * CLOCK_HOURS * HOUR;
      return { minute, x: xOf(minute) };
    }),
  };
};
