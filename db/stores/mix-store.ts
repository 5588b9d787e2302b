import { eq } from 'drizzle-orm';
import type { Mix } from '../../shared/mix.ts';
import { mixes, mixMaterials } from '../tables/mix.ts';
import { mixWaters } from '../tables/mix-water.ts';
import { mixWetCures } from '../tables/mix-wet-cure.ts';
import type { Tx } from '../transaction.ts';
import { insertAll, nextPosition } from './rows.ts';

const putMaterials = async (tx: Tx, mix: string, perBag: Mix['perBag']): Promise<void> => {
  await tx.delete(mixMaterials).where(eq(mixMaterials.mix, mix));
  await insertAll(
    tx,
    mixMaterials,
    perBag.map((entry, position) => ({ ...entry, mix, position })),
  );
};

/** Puts a mix last in the list, without how it is kept wet (`setMixWetCure`). */
export const addMix = async (tx: Tx, { perBag, wetCure: _wet, ...mix }: Mix): Promise<void> => {
  await tx.insert(mixes).values({ ...mix, position: await nextPosition(tx, mixes) });
  await putMaterials(tx, mix.id, perBag);
};

/** Everything of a mix anew; limits of temperature that it has no more are gone; how it is kept wet stays. */
export const rewriteMix = async (tx: Tx, { perBag, wetCure: _wet, id, ...mix }: Mix): Promise<void> => {
  await tx
    .update(mixes)
    .set({ minCelsius: null, maxCelsius: null, ...mix })
    .where(eq(mixes.id, id));
  await putMaterials(tx, id, perBag);
};

/** Takes a mix out, with its water. Throws while a casting is made of it. */
export const removeMix = async (tx: Tx, id: string): Promise<void> => {
  await tx.delete(mixMaterials).where(eq(mixMaterials.mix, id));
  await tx.delete(mixWaters).where(eq(mixWaters.mix, id));
  await tx.delete(mixWetCures).where(eq(mixWetCures.mix, id));
  await tx.delete(mixes).where(eq(mixes.id, id));
};
