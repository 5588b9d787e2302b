import { type Mix, MOST_WET } from '../../../shared/mix.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type MixRate, mixRate } from '../../engine/begin/mix-rate.ts';
import { readMass } from '../../engine/units/mass.ts';
import { NUMBER_TYPED, numberTyped, plainFractions } from '../../engine/units/number-typed.ts';
import { read, unread } from '../../engine/units/reading.ts';
import { readVolume } from '../../engine/units/volume.ts';
import type { Outcome } from '../core/context.ts';
import { partsTyped } from './contents-typed.ts';
import type { FormFields } from './form-fields.ts';
import { type MixWriting, mixTexts } from './mix-figures.ts';
import { ShownReader } from './shown-reader.ts';
import { readCelsius } from './temperature-figures.ts';

type Figures = Omit<Mix, 'id'>;
type Reader = ShownReader<Figures>;

/** Two weeks: longer is a slip of the hand. */
const LONGEST_MINUTES = 20_160;

const piecesTyped = (text: string) => {
  const plain = plainFractions(text);
  const number = NUMBER_TYPED.exec(plain)?.[0] === plain && plain !== '' ? numberTyped(plain) : unread('');
  return number.ok && number.value > 0 ? read(number.value) : unread('How many? A number, halves too: 2, or 1 1/2.');
};

/** By its weight, or by how many of a panel it fills. */
const yieldTyped = (reader: Reader, { system }: MixWriting, yard: YardFile): number => {
  if (reader.text('fills') === '')
    return reader.figure('yieldKgPerBag', () => reader.measure('yieldKgPerBag', (text) => readMass(text, system)));
  const casting = yard.castings.find(({ id }) => id === reader.text('fillsOf'));
  const pieces = reader.measure('fills', piecesTyped);
  if (!casting) reader.refuse('fills', 'Of which panel? Choose one.');
  return Number((pieces * (casting?.kg ?? 0)).toFixed(3));
};

const DAYS = ['coldCelsius', 'coldMinutes', 'warmCelsius', 'warmMinutes'];
const AT_REFERENCE = ['referenceCelsius', 'demouldMinutes', 'activationKelvin'];

const minutes = (reader: Reader, name: string, least = 0): number =>
  reader.whole(name, 'How many minutes?', { least, most: LONGEST_MINUTES });

type Rate = Pick<Mix, 'demouldMinutes' | 'activationKelvin' | 'referenceCelsius'>;

const rateOfDays = (reader: Reader, { system }: MixWriting, referenceCelsius: number): Rate => {
  const faults = reader.faults.length;
  const day = (name: string) => ({
    celsius: readCelsius(reader, `${name}Celsius`, system),
    minutes: minutes(reader, `${name}Minutes`, 1),
  });
  const [cold, warm] = [day('cold'), day('warm')];
  const none = { demouldMinutes: 0, activationKelvin: 0, referenceCelsius };
  if (reader.faults.length > faults) return none;
  const rate: MixRate = mixRate(cold, warm, referenceCelsius);
  if (!rate.ok) reader.refuse(rate.at, rate.reason);
  return rate.ok
    ? { demouldMinutes: rate.demouldMinutes, activationKelvin: rate.activationKelvin, referenceCelsius }
    : none;
};

const rateAtReference = (reader: Reader, { system }: MixWriting): Rate => ({
  referenceCelsius: reader.figure('referenceCelsius', () => readCelsius(reader, 'referenceCelsius', system)),
  demouldMinutes: reader.figure('demouldMinutes', () => minutes(reader, 'demouldMinutes')),
  activationKelvin: reader.figure('activationKelvin', () => reader.amount('activationKelvin', 'How many kelvin?')),
});

/** Said by a cold and a warm day, or by the figures these come to; not by both at once. */
const rateTyped = (reader: Reader, before: Figures | null, writing: MixWriting): Rate => {
  const changed = (names: readonly string[]) => names.some((name) => !reader.asShown(name));
  const [days, own] = [changed(DAYS), changed(AT_REFERENCE)];
  if (days && own)
    reader.refuse(
      'demouldMinutes',
      'Say it by the two days above or by these figures, and leave the others as they were.',
    );
  if (own) return rateAtReference(reader, writing);
  if (before && !days) return before;
  return rateOfDays(reader, writing, before?.referenceCelsius ?? 20);
};

const warmthTyped = (reader: Reader, { system }: MixWriting) => {
  const limit = (name: 'minCelsius' | 'maxCelsius') =>
    reader.figureOr(name, undefined, () => readCelsius(reader, name, system));
  const [minCelsius, maxCelsius] = [limit('minCelsius'), limit('maxCelsius')];
  if (minCelsius !== undefined && maxCelsius !== undefined && minCelsius > maxCelsius)
    reader.refuse('maxCelsius', 'That is colder than the coldest.');
  return {
    ...(minCelsius === undefined ? {} : { minCelsius }),
    ...(maxCelsius === undefined ? {} : { maxCelsius }),
    protectHours: reader.figureOr('protectHours', 0, () => reader.amount('protectHours', 'How many hours?')),
  };
};

const workTyped = (reader: Reader, before: Figures | null) => {
  const steps = [...new Set([1, 0.5, before?.bagStep ?? 1])];
  const step = reader.choice('bagStep', steps.map(String), 'Choose one of them.');
  return {
    maxBags: reader.figure('maxBags', () => reader.amount('maxBags', 'How many bags at most?')),
    bagStep: Number(step),
    crew: reader.figure('crew', () => reader.whole('crew', 'How many people?', { least: 1, most: 50 })),
    mixMinutes: reader.figure('mixMinutes', () => minutes(reader, 'mixMinutes')),
    workingMinutes: reader.figure('workingMinutes', () => minutes(reader, 'workingMinutes')),
    washMinutes: reader.figureOr('washMinutes', 0, () => minutes(reader, 'washMinutes')),
    attendMinutes: reader.figureOr('attendMinutes', 0, () => minutes(reader, 'attendMinutes')),
  };
};

/** Water is no material. Left as it was shown it is what it was, a note too. */
const waterTyped = (reader: Reader, { system, waterLitres }: MixWriting): number | null => {
  const text = reader.text('water');
  if (reader.asShown('water')) return waterLitres;
  if (text === '') return null;
  const faults = reader.faults.length;
  const litres = reader.measure('water', (one) => readVolume(one, system));
  if (litres === 0 && reader.faults.length === faults) reader.refuse('water', 'Has to be more than nothing, or empty.');
  return litres;
};

/** For how many hours pieces are kept wet, and how many minutes of a session that takes; 0 where nothing is said. */
const wetTyped = (reader: Reader): { hours: number; minutes: number } => {
  const figure = (name: string, ask: string, most: number) =>
    reader.text(name) === '' ? 0 : reader.whole(name, ask, { most });
  const hours = figure('wetCureHours', 'How many hours?', MOST_WET.hours);
  const minutes = figure('wetCureMinutes', 'How many minutes?', MOST_WET.minutes);
  if (minutes > 0 && hours === 0)
    reader.refuse('wetCureHours', 'For how many hours? The minutes are of each session within them.');
  return { hours, minutes };
};

export interface MixTyped {
  mix: Figures;
  /** To a bag. */
  waterLitres: number | null;
  /** For which pieces are kept wet once they are stripped; 0 for none. */
  wetCureHours: number;
}

/** A mix as it was typed; `before` is what the form was filled in from. */
export const mixTyped = (
  typed: FormFields,
  before: Figures | null,
  writing: MixWriting,
  yard: YardFile,
): Outcome<MixTyped> => {
  const reader: Reader = new ShownReader(typed, before, before && mixTexts(before, writing));
  const name = reader.words('name', 'What is the mix called?');
  const wet = wetTyped(reader);
  const mix: Figures = {
    ...{ name, yieldKgPerBag: yieldTyped(reader, writing, yard) },
    ...workTyped(reader, before),
    ...rateOnly(rateTyped(reader, before, writing)),
    cureHours: reader.figure('cureHours', () => reader.amount('cureHours', 'How many hours?')),
    ...warmthTyped(reader, writing),
    ...(wet.hours > 0 && wet.minutes > 0 ? { wetCure: wet } : {}),
    perBag: partsTyped(reader, before?.perBag ?? [], writing),
  };
  return reader.outcome({ mix, waterLitres: waterTyped(reader, writing), wetCureHours: wet.hours });
};

const rateOnly = ({ demouldMinutes, activationKelvin, referenceCelsius }: Rate): Rate => ({
  ...{ demouldMinutes, activationKelvin, referenceCelsius },
});
