import type { Mix } from '../../../shared/mix.ts';
import { ageRate } from '../../engine/cure/age.ts';
import { massText, readMass } from '../../engine/units/mass.ts';
import { readTemperature } from '../../engine/units/temperature.ts';
import { readVolume, volumeText } from '../../engine/units/volume.ts';
import { type ContentsWriting, contentsTexts } from './contents-typed.ts';
import { figureShown } from './figures.ts';
import { celsiusShown } from './temperature-figures.ts';

/** How a mix's figures are written, and what was typed for them. */
export interface MixWriting extends ContentsWriting {
  /** To a bag; null where no amount was said. */
  waterLitres: number | null;
  /** Hours for which pieces are kept wet once they are stripped; 0 for none. */
  wetCureHours: number;
}

export const PER_BAG = { list: 'perBag' } as const;

/** Two days to say the rate by, until the maker has named others. */
const STRIP_DAYS = { cold: 10, warm: 20 } as const;
export type StripDay = keyof typeof STRIP_DAYS;

/** Less than this over a whole minute is a rounding, and no minute. */
const TOLERANCE_MINUTES = 0.05;

/** Whole minutes until a piece can be stripped at a temperature that stays. */
export const stripMinutesAt = (
  { demouldMinutes, activationKelvin, referenceCelsius }: Omit<Mix, 'id'>,
  celsius: number,
): number => Math.ceil(demouldMinutes / ageRate(celsius, activationKelvin, referenceCelsius) - TOLERANCE_MINUTES);

/** The temperature of the cold or the warm day: the one that was typed last, or the usual one. */
export const dayCelsius = (day: StripDay, { typed, system }: Pick<MixWriting, 'typed' | 'system'>): number => {
  const kept = readTemperature(typed[`${day}Celsius`] ?? '', system);
  return kept.ok ? kept.value : STRIP_DAYS[day];
};

const stripTexts = (mix: Omit<Mix, 'id'>, writing: MixWriting) => {
  const { system, typed } = writing;
  const [cold, warm] = [dayCelsius('cold', writing), dayCelsius('warm', writing)];
  return {
    coldCelsius: celsiusShown(cold, typed.coldCelsius, system),
    coldMinutes: String(stripMinutesAt(mix, cold)),
    warmCelsius: celsiusShown(warm, typed.warmCelsius, system),
    warmMinutes: String(stripMinutesAt(mix, warm)),
    referenceCelsius: celsiusShown(mix.referenceCelsius, typed.referenceCelsius, system),
    demouldMinutes: String(mix.demouldMinutes),
    activationKelvin: String(mix.activationKelvin),
  };
};

/** As it was typed, or as the yard writes it; a note that is no amount as it stands. */
const waterText = ({ waterLitres, typed, system }: MixWriting): string =>
  waterLitres === null
    ? (typed.water ?? '')
    : figureShown(
        typed.water,
        waterLitres,
        (text) => readVolume(text, system),
        (stored) => volumeText(stored, system),
      );

/** What each field of a mix's form shows. */
export const mixTexts = (mix: Omit<Mix, 'id'>, writing: MixWriting): Readonly<Record<string, string>> => {
  const { system, typed } = writing;
  const plain = ['bagStep', 'maxBags', 'crew', 'mixMinutes', 'workingMinutes', 'washMinutes', 'attendMinutes'] as const;
  return {
    name: mix.name,
    yieldKgPerBag: figureShown(
      typed.yieldKgPerBag,
      mix.yieldKgPerBag,
      (text) => readMass(text, system),
      (stored) => massText(stored, system),
    ),
    water: waterText(writing),
    ...contentsTexts(mix.perBag, [], { ...writing, ...PER_BAG }),
    ...Object.fromEntries(plain.map((figure) => [figure, String(mix[figure])])),
    ...stripTexts(mix, writing),
    cureHours: String(mix.cureHours),
    minCelsius: celsiusShown(mix.minCelsius ?? null, typed.minCelsius, system),
    maxCelsius: celsiusShown(mix.maxCelsius ?? null, typed.maxCelsius, system),
    protectHours: String(mix.protectHours),
    wetCureHours: writing.wetCureHours === 0 ? '' : String(writing.wetCureHours),
    wetCureMinutes: mix.wetCure ? String(mix.wetCure.minutes) : '',
  };
};
