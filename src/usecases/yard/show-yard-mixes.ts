import { typedOf } from '../../../db/stores/figure-store.ts';
import { wetCuresOfMixes } from '../../../db/stores/mix-wet-cure-store.ts';
import type { Mix } from '../../../shared/mix.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { massText } from '../../engine/units/mass.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import { temperatureSaid } from '../../engine/units/temperature.ts';
import type { UseCaseContext } from '../core/context.ts';
import type { Counted, Named } from '../core/page-parts.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { shownAmount } from '../typed/measures.ts';
import { dayCelsius, mixTexts, stripMinutesAt } from '../typed/mix-figures.ts';
import { MIX_PRESETS, type MixPreset, PRESET_GUESSES, PRESETS } from './mix-presets.ts';
import { type MixWater, watersOfYard } from './mix-water.ts';
import { type MaterialChoice, showYardFrame, type YardFrame, type YardPageHead } from './show-yard-frame.ts';

/** A mix as its line and its form show it. */
export interface YardMix extends Mix {
  /** What each field of the form shows. */
  texts: FormFields;
  /** What is written down of the water in place of an amount. */
  waterNote: string | null;
  yieldText: string;
  /** How many of each panel one bag fills. */
  fills: readonly Counted[];
  /** Of one bag, in the unit that is shown. */
  contents: readonly { name: string; quantity: number; unit: string }[];
  /** Minutes to the strip on a cold and on a warm day. */
  strips: readonly { at: string; minutes: number }[];
  /** The temperature that its own minutes are of. */
  reference: string;
  /** Names of the fields that show a guess. */
  guesses: readonly string[];
}

/** A form that starts from a preset. */
export interface PresetShown {
  key: MixPreset;
  texts: FormFields;
  guesses: readonly string[];
}

/** Every mix, with what can be chosen for it. */
export interface YardMixesModel extends YardPageHead {
  mixes: readonly YardMix[];
  presets: readonly PresetShown[];
  reference: string;
  castings: readonly Named[];
  materials: readonly Omit<MaterialChoice, 'isCut' | 'isSheet'>[];
}

/** How many of each panel of the mix one bag fills, whole ones. */
const fillsOf = (yard: YardFile, { id, yieldKgPerBag }: Mix): Counted[] =>
  yard.castings
    .filter((one) => one.mix === id)
    .map(({ name, kg }) => ({ name, count: Math.floor(yieldKgPerBag / kg + 1e-9) }))
    .filter(({ count }) => count > 0);

/** The fields that show a guess: the rate with warmth is one figure, in several of them. */
const fieldsOf = (figures: readonly string[]): string[] =>
  figures.flatMap((figure) =>
    figure === 'demouldMinutes' ? [figure, 'coldMinutes', 'warmMinutes', 'activationKelvin'] : [figure],
  );

const NO_WATER: MixWater = { litres: null, note: null };

const mixShown = (
  { yard, system, guesses }: YardFrame,
  mix: Mix,
  typed: Record<string, string>,
  { litres, note }: MixWater,
  wetCureHours: number,
): YardMix => {
  const writing = { system, typed, materials: yard.materials, waterLitres: litres, wetCureHours };
  const named = new Map(yard.materials.map((material) => [material.id, material]));
  return {
    ...mix,
    texts: mixTexts(mix, writing),
    waterNote: note,
    yieldText: massText(mix.yieldKgPerBag, system),
    fills: fillsOf(yard, mix),
    contents: mix.perBag.map(({ material, quantity }) => ({
      name: named.get(material)?.name ?? material,
      ...shownAmount({ quantity, unit: named.get(material)?.unit ?? '' }, system),
    })),
    strips: (['cold', 'warm'] as const).map((day) => {
      const celsius = dayCelsius(day, writing);
      return { at: temperatureSaid(celsius, system), minutes: stripMinutesAt(mix, celsius) };
    }),
    reference: temperatureSaid(mix.referenceCelsius, system),
    guesses: fieldsOf(guesses.filter((one) => one.kind === 'mix' && one.id === mix.id).map(({ figure }) => figure)),
  };
};

/** What a form that starts from a preset shows. */
const presetsOf = ({ yard, system }: YardFrame): PresetShown[] =>
  MIX_PRESETS.map((key) => {
    const { mix, bagName, waterLitres } = PRESETS[key];
    const texts = mixTexts(mix, { system, typed: {}, materials: yard.materials, waterLitres, wetCureHours: 0 });
    // A yard that has materials has its bags among them.
    const bag = yard.materials.length === 0 ? bagName[system] : '';
    return { key, texts: { ...texts, bagName: bag }, guesses: fieldsOf([...PRESET_GUESSES, 'water']) };
  });

/** Every mix as the page and the forms show it. */
export const showYardMixes = async (context: UseCaseContext): Promise<YardMixesModel> => {
  const frame = await showYardFrame(context);
  const { yard, yardName, today, system } = frame;
  const { typed, waters, wet } = await context.database.read(async (tx) => ({
    typed: await Promise.all(yard.mixes.map(({ id }) => typedOf(tx, { kind: 'mix', id }))),
    waters: await watersOfYard(tx),
    wet: await wetCuresOfMixes(tx),
  }));
  return {
    ...{ yardName, today, system },
    mixes: yard.mixes.map((mix, index) =>
      mixShown(frame, mix, typed[index] ?? {}, waters.get(mix.id) ?? NO_WATER, wet.get(mix.id) ?? 0),
    ),
    presets: presetsOf(frame),
    reference: temperatureSaid(20, system),
    castings: yard.castings.map(({ id, name }) => ({ id, name })),
    materials: yard.materials.map(({ id, name, unit }) => ({ id, name, unit: shownUnit(unit, system).word })),
  };
};
