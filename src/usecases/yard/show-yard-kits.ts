import { type CastingSize, sizesOfCastings } from '../../../db/stores/casting-size-store.ts';
import { typedOf } from '../../../db/stores/figure-store.ts';
import type { Kit } from '../../../shared/kit.ts';
import { massText } from '../../engine/units/mass.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import type { UseCaseContext } from '../core/context.ts';
import type { Counted, Named, PageHead } from '../core/page-parts.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { kitTexts } from '../typed/kit-form.ts';
import { type ContentsShown, contentsShown } from './contents-shown.ts';
import { type MaterialChoice, showYardFrame } from './show-yard-frame.ts';

/** A kit as its line and its form show it. */
export interface YardKit extends Pick<Kit, 'id' | 'name' | 'packMinutes'>, ContentsShown {
  pieces: readonly Counted[];
  /** Pieces to be drawn by their size, the longest first; those of which nobody said how large they are are left out. */
  drawn: readonly { lengthMm: number; heightMm: number; count: number }[];
  /** All of its pieces, without pins and parts. */
  mass: string;
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

const drawnPieces = (kit: Kit, sizes: readonly CastingSize[]): YardKit['drawn'] =>
  kit.pieces
    .flatMap(({ casting, count }) => {
      const size = sizes.find((one) => one.casting === casting);
      return size ? [{ lengthMm: size.length.mm, heightMm: size.height.mm, count }] : [];
    })
    .sort((a, b) => b.lengthMm - a.lengthMm);

/** Every kit as the page and the forms show it. */
export const showYardKits = async (context: UseCaseContext): Promise<YardKitsModel> => {
  const { yard, yardName, today, system } = await showYardFrame(context);
  const { typed, sizes } = await context.database.read(async (tx) => ({
    typed: await Promise.all(yard.kits.map(({ id }) => typedOf(tx, { kind: 'kit', id }))),
    sizes: await sizesOfCastings(tx),
  }));
  const pieces = new Map(yard.castings.map((one) => [one.id, one]));
  const kits = yard.kits.map((kit, index) => ({
    ...{ id: kit.id, name: kit.name, packMinutes: kit.packMinutes },
    pieces: kit.pieces.map(({ casting, count }) => ({ name: pieces.get(casting)?.name ?? casting, count })),
    drawn: drawnPieces(kit, sizes),
    mass: massText(
      kit.pieces.reduce((sum, { casting, count }) => sum + (pieces.get(casting)?.kg ?? 0) * count, 0),
      system,
    ),
    ...contentsShown(kit.parts, kit.cuts, { materials: yard.materials, system }),
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
