import type { Mix } from '../../../shared/mix.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { calendarOf } from '../calendar/calendar.ts';
import { ageRate } from '../cure/age.ts';
import { climateOf } from '../cure/climate.ts';
import { type Quartiles, quartiles } from '../odds/quartiles.ts';
import { mixRate } from './mix-rate.ts';

/** Of fewer pieces nothing is said: one cold morning is no measure. */
export const ENOUGH_STRIPS = 3;
/** To say how much cold slows a mix, so many are needed, on days at least so many kelvin apart. */
const ENOUGH_FOR_RATE = 6;
const APART_KELVIN = 5;

/** A piece of which it is known when it was hard: so many minutes after it was full, on a day of that temperature. */
interface HardPiece {
  minutes: number;
  celsius: number;
}

/** What strips said of a mix. */
export interface MeasuredStrips {
  mix: string;
  count: number;
  /** The coldest and the warmest of them, in °C. */
  coldest: number;
  warmest: number;
  /** Minutes until a piece may be stripped at the mix's own temperature: by its figures, and as measured there. */
  figure: number;
  minutes: Quartiles;
  /** What the figures would be: three of four pieces were hard by then. */
  demouldMinutes: number;
  activationKelvin: number;
}

type Stripped = Extract<WorkRecord, { kind: 'stripped' }>;

const keyOf = (mould: string, filledAt: string): string => `${minuteOf(filledAt)} ${mould}`;

/** Pieces that somebody looked at and found not hard yet. */
const lookedAt = (records: readonly WorkRecord[]): ReadonlySet<string> =>
  new Set(records.flatMap((one) => (one.kind === 'not hard' ? [keyOf(one.mould, one.filledAt)] : [])));

/** The temperature of the air as it was told with each batch, by its pieces. */
const toldCelsius = (records: readonly WorkRecord[]): ReadonlyMap<string, number> =>
  new Map(
    records.flatMap((one) =>
      one.kind === 'poured' && one.airCelsius !== undefined
        ? one.pours.map(({ mould, filledAt }) => [keyOf(mould, filledAt), one.airCelsius!] as const)
        : [],
    ),
  );

/** It came out good as it was tapped, after a look that it was not hard, or before it was to be hard by the figures of then. */
const isMeasured = (record: WorkRecord, looks: ReadonlySet<string>): record is Stripped =>
  record.kind === 'stripped' &&
  record.cameOut === 'good' &&
  record.tappedAt !== undefined &&
  (looks.has(keyOf(record.mould, record.filledAt)) ||
    (record.mayFrom !== undefined && minuteOf(record.at) < minuteOf(record.mayFrom)));

const hardPieces = (records: readonly WorkRecord[], yard: YardFile): (HardPiece & { mix: string })[] => {
  const [looks, told] = [lookedAt(records), toldCelsius(records)];
  const climate = climateOf(yard, calendarOf(yard.yard.timeZone));
  return records.flatMap((record) => {
    if (!isMeasured(record, looks)) return [];
    const mix = yard.mixes.find(({ id }) => id === yard.castings.find((one) => one.id === record.casting)?.mix);
    const filled = minuteOf(record.filledAt);
    const minutes = minuteOf(record.at) - filled;
    if (!mix || minutes <= 0) return [];
    const celsius = told.get(keyOf(record.mould, record.filledAt)) ?? climate.celsiusAt(filled) ?? mix.referenceCelsius;
    return [{ mix: mix.id, minutes, celsius }];
  });
};

/** What the colder and the warmer half say of how much cold slows the mix; as it is known where they can't tell. */
const activationOf = (pieces: readonly HardPiece[], mix: Mix): number => {
  const sorted = [...pieces].sort((a, b) => a.celsius - b.celsius);
  if (sorted.length < ENOUGH_FOR_RATE) return mix.activationKelvin;
  const half = Math.floor(sorted.length / 2);
  const [cold, warm] = [sorted.slice(0, half), sorted.slice(-half)].map((some) => ({
    celsius: quartiles(some.map(({ celsius }) => celsius)).median,
    minutes: quartiles(some.map(({ minutes }) => minutes)).median,
  })) as [HardPiece, HardPiece];
  if (warm.celsius - cold.celsius < APART_KELVIN) return mix.activationKelvin;
  const rate = mixRate(cold, warm, mix.referenceCelsius);
  return rate.ok ? rate.activationKelvin : mix.activationKelvin;
};

const measuredOf = (mix: Mix, pieces: readonly HardPiece[]): MeasuredStrips => {
  const activationKelvin = activationOf(pieces, mix);
  const ages = pieces.map(({ minutes, celsius }) => minutes * ageRate(celsius, activationKelvin, mix.referenceCelsius));
  const minutes = quartiles(ages);
  const warmth = pieces.map(({ celsius }) => celsius);
  return {
    ...{ mix: mix.id, count: pieces.length, coldest: Math.min(...warmth), warmest: Math.max(...warmth) },
    ...{ figure: mix.demouldMinutes, minutes, demouldMinutes: Math.ceil(minutes.upper - 1e-6), activationKelvin },
  };
};

/**
 * What strips say of when pieces are hard, by mix: of those that somebody first found not hard, and of those that came out
 * good before their time. All others say nothing, for they were hard when the plan said, or long before. Temperatures are those
 * told with the batch, or else those that the yard expects. How much cold slows a mix is refined only by six pieces or more on
 * days 5 K apart. For planning only, as `mixRate`.
 *
 * Example: found not hard at 75 minutes, stripped at 90, 92 and 100, all at 20 °C: 96 minutes at 20 °C, in the middle 92.
 */
export const measuredStrips = (records: readonly WorkRecord[], yard: YardFile): MeasuredStrips[] => {
  const pieces = hardPieces(records, yard);
  return yard.mixes.flatMap((mix) => {
    const own = pieces.filter((piece) => piece.mix === mix.id);
    return own.length === 0 ? [] : [measuredOf(mix, own)];
  });
};

/** The yard's figures with what strips said of a mix in their place. */
export const withStrips = <F extends Pick<YardFile, 'mixes'>>(
  file: F,
  { mix: id, demouldMinutes, activationKelvin }: MeasuredStrips,
): F => ({
  ...file,
  mixes: file.mixes.map((mix) => (mix.id === id ? { ...mix, demouldMinutes, activationKelvin } : mix)),
});
