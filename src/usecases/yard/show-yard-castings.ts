import { sizesOfCastings } from '../../../db/stores/casting-size-store.ts';
import { typedOf } from '../../../db/stores/figure-store.ts';
import { FIRST_FIGURES } from '../../engine/begin/first-figures.ts';
import { massText } from '../../engine/units/mass.ts';
import { shownUnit } from '../../engine/units/material-unit.ts';
import type { UseCaseContext } from '../core/context.ts';
import { castingTexts, SIZES } from '../typed/casting-form.ts';
import { lengthSaid } from '../typed/size-shown.ts';
import { showYardFrame } from './show-yard-frame.ts';

/** Everything that is cast, as the page and the forms show it. */
export const showYardCastings = async (context: UseCaseContext) => {
  const { yard, yardName, today, system, guesses } = await showYardFrame(context);
  const stored = await context.database.read(async (tx) => ({
    sizes: await sizesOfCastings(tx),
    typed: await Promise.all(yard.castings.map(({ id }) => typedOf(tx, { kind: 'casting', id }))),
  }));
  const castings = yard.castings.map((casting, index) => {
    const size = stored.sizes.find((one) => one.casting === casting.id) ?? null;
    const writing = { system, materials: yard.materials, typed: stored.typed[index] ?? {} };
    return {
      ...{ id: casting.id, name: casting.name, fillMinutes: casting.fillMinutes, prepMinutes: casting.prepMinutes },
      mixName: yard.mixes.find(({ id }) => id === casting.mix)?.name ?? casting.mix,
      mass: massText(casting.kg, system),
      size: size && SIZES.map((name) => lengthSaid(size[name], system)),
      mouldCount: yard.moulds.filter(
        ({ makes, condition }) => condition !== 'retired' && makes.some((one) => one.casting === casting.id),
      ).length,
      texts: castingTexts(casting, size, writing),
      rows: { parts: casting.perPiece.length, cuts: casting.cuts.length },
      guesses: guesses.filter((one) => one.kind === 'casting' && one.id === casting.id).map(({ figure }) => figure),
    };
  });
  return {
    ...{ yardName, today, system, castings },
    densityKgPerM3: FIRST_FIGURES.densityKgPerM3,
    mixes: yard.mixes.map(({ id, name }) => ({ id, name })),
    materials: yard.materials.map(({ id, name, unit, stickMm }) => ({
      ...{ id, name, unit: shownUnit(unit, system).word, isCut: stickMm !== undefined },
    })),
  };
};
export type YardCastingsModel = Awaited<ReturnType<typeof showYardCastings>>;
export type YardCasting = YardCastingsModel['castings'][number];
