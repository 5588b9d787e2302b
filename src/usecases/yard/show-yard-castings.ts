import { sizesOfCastings } from '../../../db/stores/casting-size-store.ts';
import { typedOf } from '../../../db/stores/figure-store.ts';
import { workRecords } from '../../../db/stores/work-record-store.ts';
import type { Casting } from '../../../shared/casting.ts';
import { FIRST_FIGURES } from '../../engine/begin/first-figures.ts';
import { isRetired, makesPiece } from '../../engine/book/mould-state.ts';
import { massText } from '../../engine/units/mass.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import type { UseCaseContext } from '../core/context.ts';
import type { Named } from '../core/page-parts.ts';
import { castingTexts, SIZES } from '../typed/casting-form.ts';
import type { FormFields } from '../typed/form-fields.ts';
import { sheetRowCount } from '../typed/sheets-typed.ts';
import { lengthSaid } from '../typed/size-shown.ts';
import { SIZES_EXAMPLE } from '../typed/sizes-typed.ts';
import { type ContentsShown, contentsShown } from './contents-shown.ts';
import { type MeasuredFacts, measuredFacts } from './show-measured.ts';
import { type MaterialChoice, showYardFrame, type YardPageHead } from './show-yard-frame.ts';

/** A piece that is cast, as its line and its form show it. */
export interface YardCasting extends Pick<Casting, 'id' | 'name' | 'fillMinutes' | 'prepMinutes'> {
  mixName: string;
  mass: string;
  /** In words, in the order of the form; null where nobody said. */
  size: readonly string[] | null;
  /** The same to be drawn by. */
  sizeMm: { lengthMm: number; heightMm: number; thicknessMm: number } | null;
  /** Moulds that can make it, scrapped ones not counted. */
  mouldCount: number;
  /** What each field of the form shows. */
  texts: FormFields;
  /** Rows of the form that are filled in. */
  rows: { parts: number; cuts: number; sheets: number };
  /** Names of the figures that are guesses. */
  guesses: readonly string[];
  /** What setting it up and stripping it really took. */
  measured: readonly MeasuredFacts[];
  contents: ContentsShown;
}

/** Everything that is cast, with what can be chosen for it. */
export interface YardCastingsModel extends YardPageHead {
  castings: readonly YardCasting[];
  /** To weigh a piece by its size. */
  densityKgPerM3: number;
  /** How pieces of a sheet may be typed. */
  sizesExample: string;
  mixes: readonly Named[];
  materials: readonly MaterialChoice[];
}

/** Everything that is cast, as the page and the forms show it. */
export const showYardCastings = async (context: UseCaseContext): Promise<YardCastingsModel> => {
  const { yard, yardName, today, system, guesses } = await showYardFrame(context);
  const stored = await context.database.read(async (tx) => ({
    sizes: await sizesOfCastings(tx),
    records: await workRecords(tx),
    typed: await Promise.all(yard.castings.map(({ id }) => typedOf(tx, { kind: 'casting', id }))),
  }));
  const measured = measuredFacts(yard, stored.records, guesses);
  const castings = yard.castings.map((casting, index): YardCasting => {
    const size = stored.sizes.find((one) => one.casting === casting.id) ?? null;
    const writing = { system, materials: yard.materials, typed: stored.typed[index] ?? {} };
    return {
      ...{ id: casting.id, name: casting.name, fillMinutes: casting.fillMinutes, prepMinutes: casting.prepMinutes },
      mixName: yard.mixes.find(({ id }) => id === casting.mix)?.name ?? casting.mix,
      mass: massText(casting.kg, system),
      size: size && SIZES.map((name) => lengthSaid(size[name], system)),
      sizeMm: size && { lengthMm: size.length.mm, heightMm: size.height.mm, thicknessMm: size.thickness.mm },
      contents: contentsShown(casting.perPiece, casting.cuts, { materials: yard.materials, system }, casting.sheets),
      mouldCount: yard.moulds.filter((one) => !isRetired(one) && makesPiece(one, casting.id)).length,
      texts: castingTexts(casting, size, writing),
      rows: { parts: casting.perPiece.length, cuts: casting.cuts.length, sheets: sheetRowCount(casting.sheets) },
      measured: measured.filter(({ what, id }) => what !== 'batch' && id === casting.id),
      guesses: guesses.filter((one) => one.kind === 'casting' && one.id === casting.id).map(({ figure }) => figure),
    };
  });
  return {
    ...{ yardName, today, system, castings },
    sizesExample: SIZES_EXAMPLE[system],
    densityKgPerM3: FIRST_FIGURES.densityKgPerM3,
    mixes: yard.mixes.map(({ id, name }) => ({ id, name })),
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
