import type { Material } from '../../../shared/material.ts';
import { restsWith } from '../../../shared/rests.ts';

/** A material with so many rests of a size more, or fewer. The field is left out where there are none. */
export const withRests = <M extends Pick<Material, 'rests'>>(
  material: M,
  size: { widthMm: number; lengthMm: number },
  count: number,
): M => {
  const { rests = [], ...others } = material;
  const all = restsWith(rests, size, count);
  return (all.length > 0 ? { ...others, rests: all } : others) as M;
};
