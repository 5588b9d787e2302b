import type { Mix } from '../../../shared/mix.ts';
import { type Minute, minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { type Ageing, ageingOf } from '../cure/age.ts';
import { climateOf } from '../cure/climate.ts';

/** A mix at the temperatures the yard expects, with what its times depend on. */
export interface SettingMix {
  ageing: Pick<Ageing, 'whenAged'>;
  demouldMinutes: number;
  cureMinutes: number;
}

/** The minute from which a piece filled by `filled` may be stripped (R7). */
export const outAt = ({ ageing, demouldMinutes }: SettingMix, filled: Minute): Minute =>
  ageing.whenAged(filled, demouldMinutes);

/** The minute from which it is cured (R8), in its mould or out of it. */
export const curedAt = ({ ageing, cureMinutes }: SettingMix, filled: Minute): Minute =>
  ageing.whenAged(filled, cureMinutes);

/** How pieces set in a yard: when they may be stripped, when they are cured. Throws for a casting that is not there. */
export interface CuringTimes {
  mayStripFrom(casting: string, filled: Minute): Minute;
  curedAt(casting: string, filled: Minute): Minute;
  /** Until when a batch can be filled that was mixed by `mixed` (R3). */
  workableUntil(mix: Mix, mixed: Minute): Minute;
}

/** In hard frost a piece never sets. A hundred years stand for that: no calendar reaches much further. */
const LONGEST_MINUTES = 36_500 * 1440;

const bounded = ({ whenAged }: Ageing): SettingMix['ageing'] => ({
  whenAged: (from, minutes) => Math.min(whenAged(from, minutes), from + LONGEST_MINUTES),
});

/** The cure times of a yard, at the temperatures it expects and in its zone (R3, R7, R8). */
export const curingTimesOf = (yard: YardFile): CuringTimes => {
  const climate = climateOf(yard, calendarOf(yard.yard.timeZone));
  const mixes = new Map(
    yard.mixes.map((mix) => {
      const { demouldMinutes, cureHours } = mix;
      return [mix.id, { ageing: bounded(ageingOf(mix, climate)), demouldMinutes, cureMinutes: cureHours * 60 }];
    }),
  );
  const mixOf = (casting: string): SettingMix => {
    const found = mixes.get(yard.castings.find(({ id }) => id === casting)?.mix ?? '');
    if (!found) throw new Error(`No piece ${casting} with a mix is in the yard.`);
    return found;
  };
  return {
    mayStripFrom: (casting, filled) => outAt(mixOf(casting), filled),
    curedAt: (casting, filled) => curedAt(mixOf(casting), filled),
    workableUntil: ({ id, workingMinutes }, mixed) => mixes.get(id)!.ageing.whenAged(mixed, workingMinutes),
  };
};

/** The minute from which a piece that is in a mould may be stripped. */
export const pieceMayBeStripped = (piece: YardFile['inMould'][number], times: CuringTimes): Minute =>
  times.mayStripFrom(piece.casting, minuteOf(piece.filledAt));

/** The instant from which a poured piece is fit to go out by the plan's temperatures; null when that is past by the yard's now. */
export const readyFrom = (
  yard: YardFile,
  { casting, filledAt }: { casting: string; filledAt: string },
): string | null => {
  const cured = curingTimesOf(yard).curedAt(casting, minuteOf(filledAt));
  return cured > minuteOf(yard.yard.now) ? calendarOf(yard.yard.timeZone).instantText(cured) : null;
};

/**
 * When each mould of a batch was full that was filled one after another, the last one at `last`: in the order of filling,
 * each casting by its own fill minutes.
 *
 * Two panels of 6 minutes and one of 8, the last full at 10:00: 9:46, 9:52 and 10:00 when the one of 8 comes last.
 */
export const fillTimes = (castings: readonly string[], last: Minute, book: Pick<YardFile, 'castings'>): Minute[] => {
  const minutesOf = (casting: string) => book.castings.find(({ id }) => id === casting)?.fillMinutes ?? 0;
  let full = last;
  return castings
    .toReversed()
    .map((casting) => {
      const own = full;
      full -= minutesOf(casting);
      return own;
    })
    .toReversed();
};
