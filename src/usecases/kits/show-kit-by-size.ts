import { sizesOfCastings } from '../../../db/stores/casting-size-store.ts';
import { unitsOfYard } from '../../../db/stores/units-store.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { lengthText } from '../../engine/units/length.ts';
import { today, type UseCaseContext } from '../core/context.ts';
import { currentPlan } from '../plan/make-plan.ts';
import {
  facesTyped,
  type KitAsked,
  type KitTyped,
  kitFields,
  kitSizeTyped,
  shapeTyped,
} from '../typed/kit-size-form.ts';
import { kitFacts, typedText } from './kit-facts.ts';
import { kitLaid } from './kit-laid.ts';
import type { KitBySizeModel, KitFoundFacts } from './kit-model.ts';
import { pinMaterial, pinMaterials } from './kit-pins.ts';
import { nearSizes } from './near-sizes.ts';
import { kindText, type PanelKind, panelKinds } from './panel-kinds.ts';

/** How far pins go into the ground until something else is typed. Common practice, no source: 300 mm for one course of 200. */
const GROUND: Readonly<Record<UnitSystem, string>> = { metric: '100 mm', US: '4 in' };

/** What the form shows before anything was typed: one panel to a side, two courses. */
const startWith = ({ panels, thicknessMm }: PanelKind, system: UnitSystem): KitTyped => {
  const [long, wide = long] = panels.map(({ lengthMm }) => lengthText(lengthMm + thicknessMm, system));
  return { length: long, width: wide, courses: '2' };
};

/** What stands in the form: what was typed, and what goes without saying. */
const filledIn = (
  typed: KitTyped,
  kind: PanelKind,
  yard: YardFile,
  system: UnitSystem,
): KitTyped & { pins: string } => {
  const start = typed.length === undefined ? { ...startWith(kind, system), ...typed } : typed;
  return {
    ...{ ground: GROUND[system], courses: '1', ...start },
    ...{
      shape: shapeTyped(typed),
      faces: facesTyped(typed),
      panels: kind.key,
      pins: pinMaterial(yard, typed.pins)?.id ?? '',
    },
  };
};

const workedOut = (
  { size, payloadKg }: KitAsked,
  kind: PanelKind,
  pins: string,
  yard: YardFile,
  system: UnitSystem,
): KitFoundFacts => {
  const kit = kitLaid(size, kind);
  const ground = { yard, system, kind, pins: pinMaterial(yard, pins) };
  return {
    asked: typedText(size, system),
    made: kit.made && kitFacts(kit.made, size, payloadKg, ground),
    nearest: kit.made ? [] : nearSizes(kit, size, kind.thicknessMm, system),
  };
};

/** What a kit takes, from the yard and its data: shared by the page and by adding the kit. */
const lookAtKits = async (context: UseCaseContext) => {
  const { yard } = await currentPlan(context);
  const { sizes, system } = await context.database.read(async (tx) => ({
    sizes: await sizesOfCastings(tx),
    system: await unitsOfYard(tx),
  }));
  return { yard, system, kinds: panelKinds(yard, sizes) };
};

/** A kit worked out from the size that was typed; the nearest sizes when it can't be made; or what could not be read. */
export const showKitBySize = async (context: UseCaseContext, typed: KitTyped): Promise<KitBySizeModel> => {
  const { yard, system, kinds } = await lookAtKits(context);
  const about = { yardName: yard.yard.name, today: today(yard.yard.timeZone, context.now), system };
  const kind = kinds.find(({ key }) => key === typed.panels) ?? kinds[0];
  if (!kind) return { ...about, form: null };
  const form = filledIn(kitFields(typed), kind, yard, system);
  const asked = kitSizeTyped(form, system);
  return {
    ...about,
    form: {
      typed: form,
      kinds: kinds.map((one) => ({ value: one.key, text: kindText(one, yard, system) })),
      pinMaterials: pinMaterials(yard).map(({ id, name }) => ({ value: id, text: name })),
      panels: kind.panels.map(({ casting }) => casting.name),
    },
    faults: asked.ok ? [] : asked.faults,
    found: asked.ok ? workedOut(asked.value, kind, form.pins, yard, system) : null,
  };
};
