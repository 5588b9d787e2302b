import type { Mix } from '../../../shared/mix.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { ageingOf } from '../../engine/cure/age.ts';
import { climateOf } from '../../engine/cure/climate.ts';

/** How pieces set at the temperatures the yard expects: when they may be stripped, when they are cured. */
export interface CuringTimes {
  mayStripFrom(casting: string, filled: Minute): Minute;
  curedAt(casting: string, filled: Minute): Minute;
  /** Until when a batch can be filled that was mixed by `mixed`. */
  workableUntil(mix: Mix, mixed: Minute): Minute;
}

/** In hard frost a piece never sets. A hundred years stand for that: no calendar reaches much further. */
const LONGEST_MINUTES = 36_500 * 1440;

export const curingTimesOf = (yard: YardFile): CuringTimes => {
  const climate = climateOf(yard.temperatures, calendarOf(yard.yard.timeZone));
  const ageings = new Map(yard.mixes.map((mix) => [mix.id, ageingOf(mix, climate)]));
  const whenAged = (mix: Mix, from: Minute, minutes: number) =>
    Math.min(ageings.get(mix.id)!.whenAged(from, minutes), from + LONGEST_MINUTES);
  const mixOf = (casting: string): Mix => {
    const mix = yard.castings.find(({ id }) => id === casting)?.mix;
    const found = yard.mixes.find(({ id }) => id === mix);
    if (!found) throw new Error(`No piece ${casting} with a mix is in the yard.`);
    return found;
  };
  return {
    mayStripFrom: (casting, filled) => whenAged(mixOf(casting), filled, mixOf(casting).demouldMinutes),
    curedAt: (casting, filled) => whenAged(mixOf(casting), filled, mixOf(casting).cureHours * 60),
    workableUntil: (mix, mixed) => whenAged(mix, mixed, mix.workingMinutes),
  };
};

/** The minute from which a piece that is in a mould may be stripped. */
export const pieceMayBeStripped = (piece: YardFile['inMould'][number], curing: CuringTimes): Minute =>
  curing.mayStripFrom(piece.casting, minuteOf(piece.filledAt));
