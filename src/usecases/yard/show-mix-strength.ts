import { dateOfDay, minuteOf } from '../../../shared/time.ts';
import { calendarOf } from '../../engine/calendar/calendar.ts';
import { ageingOf } from '../../engine/cure/age.ts';
import { climateOf } from '../../engine/cure/climate.ts';
import { CEMENTS, type Cement, type StrengthBy, strengthBy, strongEnoughFrom } from '../../engine/cure/strength-by.ts';
import { temperatureSaid } from '../../engine/units/temperature.ts';
import type { UseCaseContext } from '../core/context.ts';
import type { Named, PageHead } from '../core/page-parts.ts';
import { showYardFrame } from './show-yard-frame.ts';

/** Shares that are asked for now and then: EN 13670, curing classes 3 and 4, table 4, from memory. */
const SHARES = [0.5, 0.7];
const HOUR = 60;
const DAY_HOURS = 24;
/** The age that all shares are of. */
const CURVE_DAYS = 28;
/** Beyond the day on which a piece is fit to go out. */
const DAYS_AFTER = 3;

/** The day it may be stripped, or go out, so many hours after it was filled. */
export interface StrengthStage {
  at: 'stripped' | 'out';
  day: string;
  hours: number;
  strength: StrengthBy;
}

/** What a piece of a mix, filled now, is said to have by a curve when it may be stripped and when it may go out. */
export interface MixStrength {
  stages: readonly StrengthStage[];
  /** The first day on which it has a share, and after how many hours; null where no curve says. */
  shares: readonly { share: number; day: string | null; hours: number | null }[];
  /** What it has day by day, some days beyond the last that is named; null where no curve says. */
  curve: readonly { hours: number; share: number | null }[];
}

/** How strong a piece of a mix is by then. */
export interface MixStrengthModel extends PageHead {
  mix: Named;
  /** Null until one is chosen. */
  cement: Cement | null;
  /** The temperature of today as it is said; null where none is expected. */
  expected: string | null;
  /** Null without a cement. */
  strength: MixStrength | null;
}

export const isCement = (text: string | undefined): text is Cement => CEMENTS.some((one) => one === text);

/**
 * How strong a piece of a mix is by then, by the published curve of a cement; null where there is no such mix. Without a
 * cement the page can only ask for one.
 */
export const showMixStrength = async (
  context: UseCaseContext,
  id: string,
  cement: Cement | null,
): Promise<MixStrengthModel | null> => {
  const { yard, yardName, today, system } = await showYardFrame(context);
  const mix = yard.mixes.find((one) => one.id === id);
  if (!mix) return null;
  const calendar = calendarOf(yard.yard.timeZone);
  const climate = climateOf(yard, calendar);
  const kept = { climate, calendar };
  const filled = minuteOf(context.now);
  const dayAt = (minute: number) => dateOfDay(calendar.dayOf(minute));
  const ageing = ageingOf(mix, climate);
  const stage = (at: StrengthStage['at'], age: number, by: Cement): StrengthStage => {
    const minute = ageing.whenAged(filled, age);
    const hours = Math.round((minute - filled) / HOUR);
    return { at, day: dayAt(minute), hours, strength: strengthBy(by, kept, filled, minute) };
  };
  const shareOf = (by: Cement, share: number) => {
    const minute = strongEnoughFrom(by, kept, filled, share);
    if (minute === null) return { share, day: null, hours: null };
    return { share, day: dayAt(minute), hours: Math.round((minute - filled) / HOUR) };
  };
  const curveOf = (by: Cement, days: number): MixStrength['curve'] =>
    Array.from({ length: days + 1 }, (_, day) => {
      const strength = strengthBy(by, kept, filled, filled + day * DAY_HOURS * HOUR);
      return { hours: day * DAY_HOURS, share: 'share' in strength ? strength.share : null };
    });
  const strengthOf = (by: Cement): MixStrength => {
    const stages = [stage('stripped', mix.demouldMinutes, by), stage('out', mix.cureHours * HOUR, by)];
    const shares = SHARES.map((share) => shareOf(by, share));
    const latest = Math.max(...[...stages, ...shares].map(({ hours }) => hours ?? 0));
    return { stages, shares, curve: curveOf(by, Math.max(CURVE_DAYS, Math.ceil(latest / DAY_HOURS) + DAYS_AFTER)) };
  };
  const celsius = climate.celsiusOn(calendar.dayOf(filled));
  return {
    ...{ yardName, today, cement, mix: { id: mix.id, name: mix.name } },
    expected: celsius === null ? null : temperatureSaid(celsius, system),
    strength: cement && strengthOf(cement),
  };
};
