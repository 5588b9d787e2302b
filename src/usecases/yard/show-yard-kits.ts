import { typedOf } from '../../../db/stores/figure-store.ts';
import { lengthText } from '../../engine/units/length.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import type { UseCaseContext } from '../core/context.ts';
import { kitTexts } from '../typed/kit-form.ts';
import { shownAmount } from '../typed/measures.ts';
import { showYardFrame } from './show-yard-frame.ts';

/** Every kit as the page and the forms show it. */
export const showYardKits = async (context: UseCaseContext) => {
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
    materials: yard.materials.map(({ id, name, unit, stickMm }) => ({
      ...{ id, name, unit: shownUnit(unit, system).word, isCut: stickMm !== undefined },
    })),
  };
};
export type YardKitsModel = Awaited<ReturnType<typeof showYardKits>>;
export type YardKit = YardKitsModel['kits'][number];
