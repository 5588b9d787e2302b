import { dateOfDay, minuteOf } from '../../../shared/time.ts';
import { readYardFile, type YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { diceOf } from './dice.ts';

/**
 * The yard with the weather of some days by the hour, before today and after it, now and then with a gap, frost at night, or an
 * afternoon hotter than its mixes stand. By dice of their own, so that all else of a seed's yard is what it was.
 */
export const weatherYard = (yard: YardFile, seed: number): YardFile => {
  const dice = diceOf(seed + 900_000_000);
  const today = calendarOf(yard.yard.timeZone).dayOf(minuteOf(yard.yard.now));
  const from = today + dice.whole(-3, 2);
  const days = Array.from({ length: dice.whole(1, 14) }, (_, index) => from + index)
    .filter(() => dice.chance(0.85))
    .map((day) => {
      const minCelsius = dice.whole(-4, 16);
      return { date: dateOfDay(day), minCelsius, maxCelsius: minCelsius + dice.whole(0, 22) };
    });
  const [coldestAt, warmestAt] = dice.pick([['05:00', '15:00'] as const, ['06:30', '13:10'] as const]);
  const mixes = yard.mixes.map((mix) =>
    dice.chance(0.4) ? { ...mix, minCelsius: 4, maxCelsius: 26, protectHours: dice.pick([0, 12, 24, 48]) } : mix,
  );
  const read = readYardFile({ ...yard, mixes, weather: { coldestAt, warmestAt, days } });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.yard;
};
