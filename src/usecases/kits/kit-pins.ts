import type { KitSize } from '../../../shared/kit-size.ts';
import type { Material } from '../../../shared/material.ts';
import type { YardFile } from '../../../shared/yard-file.ts';

/** What pins may be cut from: whatever comes in lengths and is not cut for the panels themselves. */
export const pinMaterials = ({ materials, castings }: YardFile): Material[] => {
  const sleeves = new Set(castings.flatMap(({ cuts }) => cuts.map(({ material }) => material)));
  return materials.filter(({ id, stickMm }) => stickMm !== undefined && !sleeves.has(id));
};

/** The one that was chosen; else what the pins of the yard's kits are cut from; else the first; null when there is none. */
export const pinMaterial = (yard: YardFile, chosen: string | undefined): Material | null => {
  const materials = pinMaterials(yard);
  const used = yard.kits.flatMap(({ cuts }) => cuts.map(({ material }) => material));
  const found = (ids: readonly string[]) => materials.find(({ id }) => ids.includes(id));
  return found(chosen ? [chosen] : []) ?? found(used) ?? materials[0] ?? null;
};

/** As high as all courses, and as deep as it goes into the ground. Example: two courses of 200, 80 into the ground: 480. */
export const pinLengthMm = ({ courses, ground }: KitSize, heightMm: number): number =>
  Number((courses * heightMm + ground.mm).toFixed(6));
