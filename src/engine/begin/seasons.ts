import { latitudeOf } from './zone-latitudes.ts';

/** What the mean of a place's coldest and warmest month may be, in °C. */
export interface Seasons {
  coldest: number;
  warmest: number;
}

/**
 * Means of the coldest and the warmest month of towns, by degrees from the equator: round figures between the coast and inland
 * (from memory of climate normals). A guess for a yard that has said nothing yet.
 */
const BY_LATITUDE: readonly { degrees: number; seasons: Seasons }[] = [
  { degrees: 0, seasons: { coldest: 26, warmest: 27 } },
  { degrees: 10, seasons: { coldest: 25, warmest: 29 } },
  { degrees: 20, seasons: { coldest: 20, warmest: 28 } },
  { degrees: 30, seasons: { coldest: 12, warmest: 28 } },
  { degrees: 40, seasons: { coldest: 4, warmest: 24 } },
  { degrees: 50, seasons: { coldest: 2, warmest: 19 } },
  { degrees: 60, seasons: { coldest: -4, warmest: 17 } },
  { degrees: 70, seasons: { coldest: -12, warmest: 11 } },
];

/** Where nobody knows where a yard lies: half way from the equator to the pole, in the north. */
const SOMEWHERE = 45;

const placeOf = (timeZone: string): number => latitudeOf(timeZone) ?? SOMEWHERE;

/**
 * A guess at the coldest and the warmest month of a time zone's own place, in °C.
 *
 * Example: `seasonsGuess('Europe/Dublin')`, at 53 degrees, is 0.2 and 18.4.
 */
export const seasonsGuess = (timeZone: string): Seasons => {
  const degrees = Math.min(Math.abs(placeOf(timeZone)), 70);
  const after = BY_LATITUDE.find((one) => one.degrees >= degrees)!;
  const before = BY_LATITUDE.findLast((one) => one.degrees <= degrees)!;
  const share = after === before ? 0 : (degrees - before.degrees) / (after.degrees - before.degrees);
  const at = (end: keyof Seasons) => before.seasons[end] + share * (after.seasons[end] - before.seasons[end]);
  return { coldest: Number(at('coldest').toFixed(1)), warmest: Number(at('warmest').toFixed(1)) };
};

const MONTHS = 12;
const JANUARY = 0;
const JULY = 6;

/** How far a month is towards the warmest one: 1 for that one, -1 for the coldest, half a year off. */
const towardsWarmest = (month: number, timeZone: string): number =>
  Math.cos((2 * Math.PI * (month - (placeOf(timeZone) < 0 ? JANUARY : JULY))) / MONTHS);

const months = (of: (month: number) => number): number[] =>
  Array.from({ length: MONTHS }, (_, month) => Number(of(month).toFixed(1)));

/**
 * The twelve months between a coldest and a warmest one, January first, in °C: along a cosine, warmest in July north of the equator and
 * in January south of it (common practice, no source).
 *
 * Example: of 4 and 16 °C in Dublin April has 10.
 */
export const monthsBetween = ({ coldest, warmest }: Seasons, timeZone: string): number[] =>
  months((month) => (coldest + warmest) / 2 + ((warmest - coldest) / 2) * towardsWarmest(month, timeZone));

/**
 * The twelve months where only the present one (January is 0) is known, in °C: as far apart as is guessed for the zone's place.
 *
 * Example: of 10 °C in April in Dublin July has 19.1, for 18.2 °C lie between its coldest and warmest month.
 */
export const monthsLike = (now: { month: number; celsius: number }, timeZone: string): number[] => {
  const { coldest, warmest } = seasonsGuess(timeZone);
  const half = (warmest - coldest) / 2;
  const mean = now.celsius - half * towardsWarmest(now.month, timeZone);
  const all = months((month) => mean + half * towardsWarmest(month, timeZone));
  return all.map((celsius, month) => (month === now.month ? now.celsius : celsius));
};
