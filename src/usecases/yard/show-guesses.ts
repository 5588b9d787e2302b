import { guessesOfYard } from '../../../db/stores/figure-store.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import type { FigureOf } from '../../../shared/figure.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { ageRate } from '../../engine/cure/age.ts';
import { massText } from '../../engine/units/mass.ts';
import { temperatureSaid } from '../../engine/units/temperature.ts';
import { volumeText } from '../../engine/units/volume.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import type { Named, PageHead } from '../core/page-parts.ts';
import { currentPlan } from '../plan/make-plan.ts';
import { watersOfYard } from './mix-water.ts';

/** One figure of several things that is still to check: what it is called, whose it is, and what it is now. */
export interface GuessGroup {
  kind: FigureOf['kind'];
  figure: string;
  values: GuessedValue[];
}

/** Whose the figure is, and what it is now, in the yard's units. */
interface GuessedValue extends Named {
  text: string;
}

/** Every figure of the yard that is still to check. */
export interface GuessesModel extends PageHead {
  groups: readonly GuessGroup[];
}

type Facts = Readonly<Record<string, unknown>>;

const LISTS: Readonly<Partial<Record<FigureOf['kind'], (yard: YardFile) => readonly (Facts & { id: string })[]>>> = {
  mix: ({ mixes }) => mixes,
  casting: ({ castings }) => castings,
  mould: ({ moulds }) => moulds,
  material: ({ materials }) => materials,
  kit: ({ kits }) => kits,
};

const KILOGRAMS = ['kg', 'yieldKgPerBag'];
const DEGREES = ['referenceCelsius', 'minCelsius', 'maxCelsius'];

/** How long a mix takes on days of other temperatures, beside what it takes at its own. */
const OTHER_DAYS_CELSIUS = [10];

const strippedText = (mix: YardFile['mixes'][number], system: UnitSystem): string => {
  const at = (celsius: number, minutes: number) =>
    `${Math.ceil(minutes)} minutes at ${temperatureSaid(celsius, system)}`;
  const others = OTHER_DAYS_CELSIUS.filter((celsius) => celsius !== mix.referenceCelsius).map((celsius) =>
    at(celsius, mix.demouldMinutes / ageRate(celsius, mix.activationKelvin, mix.referenceCelsius)),
  );
  return [at(mix.referenceCelsius, mix.demouldMinutes), ...others].join(', ');
};

const textOf = (figure: string, value: unknown, unit: string, system: UnitSystem): string => {
  if (typeof value !== 'number') return value === undefined || value === null ? 'not said' : String(value);
  if (KILOGRAMS.includes(figure)) return massText(value, system);
  if (DEGREES.includes(figure)) return temperatureSaid(value, system);
  if (figure.endsWith('Minutes')) return value === 1 ? '1 minute' : `${value} minutes`;
  if (figure.endsWith('Hours')) return `${value} hours`;
  if (figure.endsWith('Days')) return value === 1 ? '1 day' : `${value} days`;
  if (figure === 'onHand') return `${value} ${unit}${value === 1 ? '' : 's'}`;
  return String(value);
};

/** What a guess is about and its present value; null where that is gone. */
const guessedValue = ({ kind, id, figure }: FigureOf, yard: YardFile, system: UnitSystem): GuessedValue | null => {
  if (kind === 'yard') {
    const [first] = yard.temperatures;
    const expected = first ? `${temperatureSaid(first.celsius, system)}` : 'none expected';
    const value = (yard.yard as Facts)[figure];
    return { id, name: yard.yard.name, text: figure === 'temperatures' ? expected : textOf(figure, value, '', system) };
  }
  const thing = LISTS[kind]?.(yard).find((one) => one.id === id);
  if (!thing) return null;
  const name = String(thing.name ?? id);
  const mix = yard.mixes.find((one) => kind === 'mix' && one.id === id);
  if (mix && figure === 'demouldMinutes') return { id, name, text: strippedText(mix, system) };
  return { id, name, text: textOf(figure, thing[figure], String(thing.unit ?? ''), system) };
};

/** The guesses that are about the same figure, together; of several things in the order of the yard's lists. */
export const guessGroups = (guesses: readonly FigureOf[], yard: YardFile, system: UnitSystem): GuessGroup[] => {
  const groups = new Map<string, GuessGroup>();
  const inList = ({ kind, id }: FigureOf) => LISTS[kind]?.(yard).findIndex((one) => one.id === id) ?? 0;
  for (const guess of [...guesses].sort((a, b) => inList(a) - inList(b))) {
    const value = guessedValue(guess, yard, system);
    if (!value) continue;
    const key = `${guess.kind} ${guess.figure}`;
    const group = groups.get(key) ?? { kind: guess.kind, figure: guess.figure, values: [] };
    groups.set(key, group);
    group.values.push(value);
  }
  return [...groups.values()];
};

/** Every figure of the yard that is still to check, with what it is now. */
export const showGuesses = async (context: UseCaseContext): Promise<GuessesModel> => {
  const { yard } = await currentPlan(context);
  const { guesses, system, waters } = await context.database.read(async (tx) => ({
    guesses: await guessesOfYard(tx),
    system: await unitsOfYard(tx),
    waters: await watersOfYard(tx),
  }));
  const watered = (mix: YardFile['mixes'][number]) => {
    const litres = waters.get(mix.id)?.litres ?? null;
    return { ...mix, water: litres === null ? null : volumeText(litres, system) };
  };
  return {
    yardName: yard.yard.name,
    today: today(yard.yard.timeZone, context.now),
    groups: guessGroups(guesses, { ...yard, mixes: yard.mixes.map(watered) }, system),
  };
};
