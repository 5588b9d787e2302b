import type { Tx } from '../../../db/open.ts';
import { addGuesses, setTyped, typedOf } from '../../../db/stores/figure-store.ts';
import { addMaterial } from '../../../db/stores/material-store.ts';
import { addMix, rewriteMix } from '../../../db/stores/mix-store.ts';
import { setMixWater } from '../../../db/stores/mix-water-store.ts';
import { setMixWetCure, wetCuresOfMixes } from '../../../db/stores/mix-wet-cure-store.ts';
import type { FigureOf } from '../../../shared/figure.ts';
import type { Material } from '../../../shared/material.ts';
import type { Mix } from '../../../shared/mix.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { FIRST_FIGURES } from '../../engine/begin/first-figures.ts';
import { readTemperature, temperatureText } from '../../engine/units/temperature.ts';
import { done, type Outcome, refuse } from '../core/context.ts';
import { newId } from '../core/new-id.ts';
import type { Edit } from '../plan/save-edit.ts';
import { worthKeeping } from '../typed/amount-typed.ts';
import { keepFigures, typedAnew } from '../typed/figures.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { measuresOf } from '../typed/measures.ts';
import { type MixWriting, mixTexts, PER_BAG } from '../typed/mix-figures.ts';
import { mixTyped } from '../typed/mix-form.ts';
import { TypedReader } from '../typed/typed-reader.ts';
import { keepContents } from './keep-contents.ts';
import { PRESET_GUESSES, type PresetFigures, presetNamed } from './mix-presets.ts';
import { watersOfYard } from './mix-water.ts';
import { withMix } from './with-mix.ts';

type Figures = Omit<Mix, 'id'>;

const FIGURES = [
  ...(['maxBags', 'bagStep', 'crew', 'mixMinutes', 'workingMinutes', 'washMinutes', 'attendMinutes'] as const),
  ...(['cureHours', 'activationKelvin', 'protectHours'] as const),
];
const TYPED_FIGURES = ['yieldKgPerBag', 'referenceCelsius', 'minCelsius', 'maxCelsius'] as const;

/** The temperature of a day is kept with its unit: it is stored nowhere else. */
const dayText = (text: string, system: UnitSystem): string => {
  const celsius = readTemperature(text, system);
  return worthKeeping(text) ?? (celsius.ok ? temperatureText(celsius.value, system) : '');
};

/** What the form was filled in from; no mix where it is added. */
interface Before {
  mix: Figures | null;
  writing: MixWriting;
  shown: FormFields;
}

const keep = async (
  tx: Tx,
  { mix: before, writing, shown }: Before,
  after: Mix,
  { waterLitres, wetCureHours, typed }: { waterLitres: number | null; wetCureHours: number; typed: FormFields },
): Promise<void> => {
  const owner = { kind: 'mix', id: after.id } as const;
  const rate = (mix: Figures | null) => mix && [mix.demouldMinutes, mix.activationKelvin, mix.referenceCelsius];
  await keepFigures(tx, owner, [
    ...FIGURES.map((figure) => ({ figure, before: before?.[figure], after: after[figure] })),
    ...TYPED_FIGURES.map((figure) => ({
      ...{ figure, before: before?.[figure], after: after[figure] },
      typed: typedAnew(typed, shown, figure),
    })),
    { figure: 'demouldMinutes', before: rate(before), after: rate(after) },
    {
      figure: 'water',
      before: before && writing.waterLitres,
      after: waterLitres,
      typed: typedAnew(typed, shown, 'water'),
    },
  ]);
  await setMixWater(tx, after.id, waterLitres);
  await setMixWetCure(tx, after.id, wetCureHours, after.wetCure?.minutes ?? 0);
  for (const figure of ['coldCelsius', 'warmCelsius'])
    if (typedAnew(typed, shown, figure) !== undefined)
      await setTyped(tx, { ...owner, figure }, dayText(typed[figure] ?? '', writing.system) || null);
  await keepContents(tx, owner, typed, { ...PER_BAG, shown, typed: writing.typed });
};

interface NewBag {
  bag: Material;
  guesses: string[];
}

/** The bag itself, written into the stock book along with the mix; null where none was named. */
const bagTyped = (typed: FormFields, yard: YardFile, openedDays: number): Outcome<NewBag | null> => {
  const name = typed.bagName ?? '';
  if (name === '') return done(null);
  const reader = new TypedReader(typed);
  reader.words('bagName', '');
  if (yard.materials.some((one) => one.name.toLowerCase() === name.toLowerCase()))
    reader.refuse('bagName', 'That is in the stock book already. Leave this empty and choose it below.');
  const counted = reader.wholeOrNone('bagsThere', 'How many bags are there?');
  const id = newId(name, new Set(yard.materials.map((one) => one.id)));
  // Had on the day, until somebody says how long it takes: what is not known holds no date up.
  const bought = { pack: 1, leadDays: 0, minimum: 0, kerfMm: 0 };
  // Where half a bag is mixed now and then, the rest of it stands open for so many days.
  const bag = { id, name, unit: 'bag', onHand: counted ?? 0, openedDays, ...bought };
  return reader.outcome({ bag, guesses: ['leadDays', 'openedDays', ...(counted === null ? ['onHand'] : [])] });
};

const both = <A, B>(one: Outcome<A>, other: Outcome<B>): Outcome<readonly [A, B]> => {
  if (one.ok && other.ok) return done([one.value, other.value]);
  return { ok: false, faults: [...(one.ok ? [] : one.faults), ...(other.ok ? [] : other.faults)] };
};

/** What stands as the preset has it is a guess. */
const guessesOf = (mix: Mix, litres: number | null, preset: PresetFigures | null): FigureOf[] =>
  [
    ...PRESET_GUESSES.filter((figure) => preset && preset.mix[figure] === mix[figure]),
    ...(preset?.waterLitres === litres ? ['water'] : []),
  ].map((figure) => ({ kind: 'mix', id: mix.id, figure }));

/** A mix, from one bag on; and the bag, where it is not in the stock book yet. */
export const addOneMix = (typed: FormFields): Edit<string> => ({
  what: { kind: 'mix added', words: (name) => `${name} added` },
  work: async (tx, yard) => {
    const preset = presetNamed(typed.from);
    const waterLitres = preset?.waterLitres ?? null;
    const writing = { ...(await measuresOf(tx)), typed: {}, materials: yard.materials, waterLitres, wetCureHours: 0 };
    const read = both(
      mixTyped(typed, preset?.mix ?? null, writing, yard),
      bagTyped(typed, yard, preset?.openedDays ?? FIRST_FIGURES.openedDays),
    );
    if (!read.ok) return read;
    const [{ mix: figures, waterLitres: litres, wetCureHours }, added] = read.value;
    const id = newId(figures.name, new Set(yard.mixes.map((one) => one.id)));
    const perBag = [...(added ? [{ material: added.bag.id, quantity: 1 }] : []), ...figures.perBag];
    const mix: Mix = { ...figures, id, perBag };
    const materials = added ? [...yard.materials, added.bag] : yard.materials;
    const then = withMix({ ...yard, materials }, mix, writing.system);
    if (!then.ok) return then;
    if (added) {
      await addMaterial(tx, added.bag, yard.yard.now);
      await addGuesses(
        tx,
        added.guesses.map((figure) => ({ kind: 'material', id: added.bag.id, figure })),
      );
    }
    await addMix(tx, mix);
    const shown = preset ? mixTexts(preset.mix, writing) : {};
    await keep(tx, { mix: null, writing, shown }, mix, { waterLitres: litres, wetCureHours, typed });
    await addGuesses(tx, guessesOf(mix, litres, preset));
    return done(mix.name);
  },
});

/** What a mix is called, takes, gives, and how it hardens. */
export const editMix = (id: string, typed: FormFields): Edit<string> => ({
  what: { kind: 'mix set', words: (name) => `${name} changed` },
  work: async (tx, yard) => {
    const before = yard.mixes.find((one) => one.id === id);
    if (!before) return refuse('name', 'This mix is not there any more.');
    const kept = await typedOf(tx, { kind: 'mix', id });
    const waterLitres = (await watersOfYard(tx)).get(id)?.litres ?? null;
    const wetCureHours = (await wetCuresOfMixes(tx)).get(id) ?? 0;
    const writing = { ...(await measuresOf(tx)), typed: kept, materials: yard.materials, waterLitres, wetCureHours };
    const read = mixTyped(typed, before, writing, yard);
    if (!read.ok) return read;
    const mix: Mix = { ...read.value.mix, id };
    const then = withMix(yard, mix, writing.system);
    if (!then.ok) return then;
    await rewriteMix(tx, mix);
    const shown = mixTexts(before, writing);
    await keep(tx, { mix: before, writing, shown }, mix, { ...read.value, typed });
    return done(mix.name);
  },
});
