import type { Tx } from '../../../db/open.ts';
import { addToStock } from '../../../db/stores/material-store.ts';
import type { Cut, Material } from '../../../shared/material.ts';
import type { YardFile } from '../../../shared/yard-file.ts';

/**
 * How much of a stick some pieces take: n of them fit when their lengths and n - 1 saw cuts come to a stick. 4 of 297 mm
 * from 3000 mm with cuts of 3 mm are 4 x 300 / 3003 of one.
 */
export const sticksTaken = ({ stickMm, kerfMm }: Pick<Material, 'stickMm' | 'kerfMm'>, cut: Cut): number =>
  stickMm === undefined ? 0 : (cut.count * (cut.lengthMm + kerfMm)) / (stickMm + kerfMm);

/** Takes cut lengths out of stock (or puts them back, with a count below zero); the rest of a stick stays, as an offcut. */
export const takeCuts = async (tx: Tx, yard: YardFile, cuts: readonly Cut[]): Promise<void> => {
  for (const cut of cuts) {
    const material = yard.materials.find(({ id }) => id === cut.material);
    if (material) await addToStock(tx, cut.material, -sticksTaken(material, cut));
  }
};
