import type { Mix } from '../../../shared/mix.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import { FIRST_FIGURES } from '../../engine/begin/first-figures.ts';

/** What a mix may be started from: figures to be corrected by the bag's data sheet. */
export const MIX_PRESETS = ['rapid', 'ordinary'] as const;
export type MixPreset = (typeof MIX_PRESETS)[number];

export interface PresetFigures {
  mix: Omit<Mix, 'id'>;
  /** As is printed on the bag, by what the yard measures with: 25 kg are 55 lb. */
  bagName: Readonly<Record<UnitSystem, string>>;
  waterLitres: number;
  /** So many days a bag that was opened keeps, tied up and dry. */
  openedDays: number;
}

const { mixMinutes, workingMinutes, washMinutes, attendMinutes, cureHours, referenceCelsius, openedDays } =
  FIRST_FIGURES;

/** Rapid-hardening (calcium sulfoaluminate) mortar. Common practice without a source, where none is named. */
const RAPID: PresetFigures = {
  bagName: { metric: 'Fast-setting mortar, 25 kg', US: 'Fast-setting mortar, 55 lb' },
  // One 25 kg bag is wetted with 4.7 l (5 US quarts): facts of the trade, no source.
  waterLitres: 4.7,
  openedDays,
  mix: {
    name: 'Fast-setting mix',
    // One bag fills two panels of 0.91 m, 13.6 kg each: facts of the trade, no source.
    yieldKgPerBag: 27.2,
    ...{ bagStep: 1, maxBags: 1, crew: 1, mixMinutes, workingMinutes, washMinutes, attendMinutes, cureHours },
    // 90 minutes at 20 °C and 180 at 10 °C: no published maturity constant fits such mortar.
    ...{ demouldMinutes: 90, activationKelvin: 5753, referenceCelsius },
    // Cold weather begins at 4 to 5 °C: ACI 306R-10. 30 °C: the lower of the usual limits for fresh concrete.
    ...{ minCelsius: 5, maxCelsius: 30, protectHours: 24 },
    perBag: [],
  },
};

/** Ordinary (Portland) cement mortar or concrete from a bag. Common practice without a source, where none is named. */
const ORDINARY: PresetFigures = {
  bagName: { metric: 'Ordinary mortar, 25 kg', US: 'Ordinary mortar, 55 lb' },
  waterLitres: 3.5,
  // It takes up damp more slowly than what sets fast: about two weeks.
  openedDays: 14,
  mix: {
    name: 'Ordinary mix',
    ...{ yieldKgPerBag: 26, bagStep: 1, maxBags: 1, crew: 1, mixMinutes, workingMinutes: 45, washMinutes: 10 },
    ...{ attendMinutes: 0, demouldMinutes: 1440, activationKelvin: 5000, referenceCelsius },
    // A week: 0.78 of the strength at 28 days, class N, EN 1992-1-1:2004, 3.1.2(6), eq 3.2.
    cureHours: 168,
    // Cold weather begins at 4 to 5 °C: ACI 306R-10. 30 °C: the lower of the usual limits for fresh concrete.
    ...{ minCelsius: 5, maxCelsius: 30, protectHours: 48 },
    perBag: [],
  },
};

export const PRESETS: Readonly<Record<MixPreset, PresetFigures>> = { rapid: RAPID, ordinary: ORDINARY };

export const presetNamed = (name: string | undefined): PresetFigures | null => {
  const preset = MIX_PRESETS.find((one) => one === name);
  return preset ? PRESETS[preset] : null;
};

/** The figures of a preset that are guesses until the yard has confirmed them. */
export const PRESET_GUESSES = [
  ...(['yieldKgPerBag', 'maxBags', 'crew', 'mixMinutes', 'workingMinutes', 'washMinutes', 'attendMinutes'] as const),
  ...(['demouldMinutes', 'cureHours', 'minCelsius', 'maxCelsius', 'protectHours'] as const),
];
