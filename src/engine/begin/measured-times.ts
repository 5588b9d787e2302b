import type { PouredRecord } from '../../../shared/batch-record.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { WorkRecord } from '../../../shared/work-record.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Quartiles, quartiles } from '../odds/quartiles.ts';

/** Of fewer tasks nothing is said: two quick ones are no measure. */
export const ENOUGH_MEASURED = 5;

/** A time of handling that was measured: of a panel its set-up, fill or strip; of a mix its mixing, or all of a batch. */
export interface MeasuredTime {
  what: 'set up' | 'strip' | 'batch' | 'mix' | 'fill';
  /** The casting, or the mix. */
  id: string;
  /** In minutes: by the figures as they are, of a batch as many moulds as those measured had. */
  figure: number;
  /** How many were measured: both their ends were tapped as they were. */
  count: number;
  /** In minutes. */
  minutes: Quartiles;
}

interface Sample {
  what: MeasuredTime['what'];
  id: string;
  figure: number;
  minutes: number;
}

type File = Pick<YardFile, 'castings' | 'mixes'>;

/** The minutes between two taps; null where one of them is missing or they are the wrong way round. */
const between = (from: string | undefined, to: string | undefined): number | null => {
  if (from === undefined || to === undefined) return null;
  const minutes = minuteOf(to) - minuteOf(from);
  return minutes > 0 ? minutes : null;
};

const batchSample = (record: PouredRecord, { mixes, castings }: File): Sample[] => {
  const minutes = between(record.mixedFrom, record.tappedAt);
  const mix = mixes.find(({ id }) => id === record.mix);
  const fills = record.pours.map(({ casting }) => castings.find(({ id }) => id === casting)?.fillMinutes);
  if (minutes === null || !mix || fills.includes(undefined)) return [];
  const figure = mix.mixMinutes + fills.reduce<number>((sum, one) => sum + (one ?? 0), 0);
  return figure > 0 ? [{ what: 'batch', id: mix.id, figure, minutes }] : [];
};

/** Mixing and filling apart, where it was tapped when one went over into the other; filling where all its pieces are alike. */
const mixAndFill = (record: PouredRecord, { mixes, castings }: File): Sample[] => {
  const [mixed, filled] = [between(record.mixedFrom, record.mixedAt), between(record.mixedAt, record.tappedAt)];
  const mix = mixes.find(({ id }) => id === record.mix);
  const casting = castings.find(({ id }) => record.pours.every((pour) => pour.casting === id));
  return [
    ...(mix && mixed !== null ? [{ what: 'mix' as const, id: mix.id, figure: mix.mixMinutes, minutes: mixed }] : []),
    ...(casting && filled !== null
      ? [{ what: 'fill' as const, id: casting.id, figure: casting.fillMinutes, minutes: filled / record.pours.length }]
      : []),
  ];
};

const taskSample = (record: Extract<WorkRecord, { kind: 'set up' | 'stripped' }>, { castings }: File): Sample[] => {
  const minutes = between(record.workedFrom, record.tappedAt);
  const casting = castings.find(({ id }) => id === record.casting);
  if (minutes === null || !casting) return [];
  const figure = record.kind === 'stripped' ? casting.stripMinutes : casting.cleanMinutes + casting.prepMinutes;
  return [{ what: record.kind === 'stripped' ? 'strip' : 'set up', id: casting.id, figure, minutes }];
};

const samplesOf = (records: readonly WorkRecord[], file: File): Sample[] =>
  records.flatMap((record) => {
    if (record.kind === 'poured')
      return record.mixedAt === undefined ? batchSample(record, file) : mixAndFill(record, file);
    return record.kind === 'set up' || record.kind === 'stripped' ? taskSample(record, file) : [];
  });

/**
 * What tasks really took, by taps at both their ends, beside what the yard's figures say of the same tasks; what nothing was
 * measured of is left out. What was recorded as planned, or told of later, measures nothing.
 *
 * Example: three strips of 9, 10 and 14 minutes where the figure is 8: 3 of them, in the middle 10.
 */
export const measuredTimes = (records: readonly WorkRecord[], file: File): MeasuredTime[] => {
  const groups = new Map<string, Sample[]>();
  for (const sample of samplesOf(records, file)) {
    const key = `${sample.what} ${sample.id}`;
    const group = groups.get(key);
    if (group) group.push(sample);
    else groups.set(key, [sample]);
  }
  return [...groups.values()].map((samples) => ({
    ...{ what: samples[0]!.what, id: samples[0]!.id, count: samples.length },
    figure: quartiles(samples.map(({ figure }) => figure)).median,
    minutes: quartiles(samples.map(({ minutes }) => minutes)),
  }));
};

const scaled = (minutes: number, factor: number): number =>
  minutes === 0 ? 0 : Math.max(1, Math.round(minutes * factor));

/**
 * The yard's figures with what was measured in their place: the middle of it, in whole minutes. Cleaning and setting up share
 * theirs as they did, and so do mixing and filling.
 *
 * Example: 6 minutes to clean and 12 to set up, measured as 24: 8 and 16.
 */
export const withMeasured = <F extends File>(file: F, { what, id, figure, minutes: { median } }: MeasuredTime): F => {
  const factor = median / figure;
  if (what === 'batch') {
    const mixes = file.mixes.map((mix) =>
      mix.id === id ? { ...mix, mixMinutes: scaled(mix.mixMinutes, factor) } : mix,
    );
    const castings = file.castings.map((one) =>
      one.mix === id ? { ...one, fillMinutes: scaled(one.fillMinutes, factor) } : one,
    );
    return { ...file, mixes, castings };
  }
  const whole = Math.max(1, Math.round(median));
  if (what === 'mix')
    return { ...file, mixes: file.mixes.map((mix) => (mix.id === id ? { ...mix, mixMinutes: whole } : mix)) };
  const castings = file.castings.map((one) => {
    if (one.id !== id) return one;
    if (what === 'fill') return { ...one, fillMinutes: whole };
    if (what === 'strip') return { ...one, stripMinutes: whole };
    const clean = figure > 0 ? Math.round((whole * one.cleanMinutes) / figure) : 0;
    return { ...one, cleanMinutes: clean, prepMinutes: whole - clean };
  });
  return { ...file, castings };
};
