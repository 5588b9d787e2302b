import { typedOf } from '../../../db/stores/figure-store.ts';
import type { Kit } from '../../../shared/kit.ts';
import { lengthText } from '../../engine/units/length.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import type { UseCaseContext } from '../core/context.ts';
import type { Counted, Named, PageHead } from '../core/page-parts.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { kitTexts } from '../typed/kit-form.ts';
import { shownAmount } from '../typed/measures.ts';
import { type MaterialChoice, showYardFrame } from './show-yard-frame.ts';

/** A kit as its line and its form show it. */
export interface YardKit extends Pick<Kit, 'id' | 'name' | 'packMinutes'> {
  pieces: readonly Counted[];
  /** In the unit that is shown. */
  parts: readonly { name: string; quantity: number; unit: string }[];
  cuts: readonly (Counted & { length: string })[];
  /** What each field of the form shows. */
  texts: FormFields;
  /** Rows of the form that are filled in. */
  rows: { pieces: number; parts: number; cuts: number };
}

/** Every kit, with what can be chosen for it. */
export interface YardKitsModel extends PageHead {
  kits: readonly YardKit[];
  castings: readonly Named[];
  materials: readonly MaterialChoice[];
}

/** Every kit as the page and the forms show it. */
export const showYardKits = async (context: UseCaseContext): Promise<YardKitsModel> => {
  const { yard, yardName, today, system } = await showYardFrame(context);
  const typed = await context.database.read((tx) =>
    Promise.all(yard.kits.map(({ id }) => typedOf(tx, { kind: 'kit', id }))),
  );
  const pieceName = new Map(yard.castings.map(({ id, name }) => [id, name]));
  const material = new Map(yard.materials.map((one) => [one.id, one]));
  const kits = yard.kits.map((kit, index) => ({
    ...{ id: kit.id, name: kit.name, packMinutes: kit.packMinutes },
    pieces: kit.pieces.map(({ casting, count }) => ({ name: pieceName.get(casting) ?? casting, count })),
    parts: kit.parts.map(({ material: id, quantity }) => ({
      name: material.get(id)?.name ?? id,
      ...shownAmount({ quantity, unit: material.get(id)?.unit ?? '' }, system),
    })),
    cuts: kit.cuts.map(({ material: id, lengthMm, count }) => ({
      ...{ name: material.get(id)?.name ?? id, length: lengthText(lengthMm, system), count },
    })),
    texts: kitTexts(kit, { system, materials: yard.materials, typed: typed[index] ?? {} }),
    rows: { pieces: kit.pieces.length, parts: kit.parts.length, cuts: kit.cuts.length },
  }));
  return {
    ...{ yardName, today, kits },
    castings: yard.castings.map(({ id, name }) => ({ id, name })),
    materials: yard.materials.map(({ id, name, unit, stickMm, sheetWidthMm }) => ({
      ...{
        id,
        name,
        unit: shownUnit(unit, system).word,
        isCut: stickMm !== undefined,
        isSheet: sheetWidthMm !== undefined,
      },
    })),
  };
};
