import type { Cut, MaterialQuantity } from '../../../shared/material.ts';

/** Places in a list by name. */
export type Index = Map<string, number>;

/** Where each stands in its list. */
export const indexOf = (list: { id: string }[]): Index => new Map(list.map((x, i) => [x.id, i]));

/** Quantities with their material by its place in the list. */
export const quantities = (list: MaterialQuantity[], materials: Index) =>
  list.map((x) => ({ material: materials.get(x.material)!, quantity: x.quantity }));

/** Cuts with their material by its place in the list. */
export const cutsOf = (list: readonly Cut[], materials: Index) =>
  list.map((x) => ({ material: materials.get(x.material)!, lengthMm: x.lengthMm, count: x.count }));
