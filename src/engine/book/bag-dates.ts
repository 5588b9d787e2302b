import { undatedIn } from '../../../shared/bags.ts';
import type { PouredRecord } from '../../../shared/batch-record.ts';
import type { Material } from '../../../shared/material.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Delivery, lotsUsed } from '../buy/lots-used.ts';
import type { Entry } from './entry.ts';
import { bagsPoured } from './pour.ts';
import type { PourWork } from './work-done.ts';

/** Sums of fractions are not exact: so little is nothing. */
const EPSILON = 1e-9;

/** What came of each material, by its id. */
export type Deliveries = ReadonlyMap<string, readonly Delivery[]>;

/** Which bags a batch was mixed of: by material, a date each. */
export type BagDates = NonNullable<PouredRecord['bagDates']>;

/** The material of a mix that its bags are of: what it is first made up of; null where it is made up of nothing. */
export const bagOf = (mix: string, { mixes }: Pick<YardFile, 'mixes'>): string | null =>
  mixes.find(({ id }) => id === mix)?.perBag[0]?.material ?? null;

type Used = Extract<Entry, { kind: 'stock' }>;

/** How much of each date the entries of a batch took of a material, those of no known date under null. */
const usedByDate = (entries: readonly Entry[], material: string): ReadonlyMap<string | null, number> => {
  const used = new Map<string | null, number>();
  const own = entries.filter((one): one is Used => one.kind === 'stock' && one.material === material);
  // What a bag that was opened leaves comes in again, as an opened one of its date.
  for (const { quantity, bags } of own) used.set(bags?.useBy ?? null, (used.get(bags?.useBy ?? null) ?? 0) - quantity);
  return used;
};

/** The days on which what was used came, of bags without a date: the deliveries that have none either, the oldest first. */
const daysCame = (quantity: number, material: Material, deliveries: readonly Delivery[]): BagDates =>
  lotsUsed(
    undatedIn(material),
    quantity,
    deliveries.filter(({ useBy }) => !useBy),
  ).map((on) => ({ material: material.id, on }));

const datesByBook = (material: Material, entries: readonly Entry[], deliveries: readonly Delivery[]): BagDates => {
  const used = [...usedByDate(entries, material.id)].filter(([, quantity]) => quantity > EPSILON);
  return [
    ...used.flatMap(([date, quantity]) => (date === null ? daysCame(quantity, material, deliveries) : [])),
    ...used
      .flatMap(([date]) => (date === null ? [] : [{ material: material.id, on: date, dated: true as const }]))
      .sort((a, b) => (a.on < b.on ? -1 : 1)),
  ];
};

/**
 * Which bags a batch was mixed of: the dates read off them, and else those of the bags that `entries`, what it came to in the
 * stock book, took. Of bags without a date it is the day they came, where a delivery accounts for them. `yard` as it was before.
 *
 * Example: 2 bags of 2 May were there and one of 9 May, and 2.5 were mixed: 2 May and 9 May.
 */
export const bagDatesOf = (
  work: PourWork,
  yard: YardFile,
  deliveries: Deliveries,
  entries: readonly Entry[],
): BagDates => {
  const mixed = bagsPoured(work, yard);
  if (!mixed) return [];
  const read = work.told?.bagDates ?? [];
  const own = bagOf(mixed.mix.id, yard);
  const typed = own === null ? [] : read.map((on) => ({ material: own, on, typed: true as const }));
  const taken = new Set(mixed.mix.perBag.map(({ material }) => material));
  if (typed.length > 0 && own !== null) taken.delete(own);
  const byBook = yard.materials
    .filter(({ id }) => taken.has(id))
    .flatMap((material) => datesByBook(material, entries, deliveries.get(material.id) ?? []));
  return [...typed, ...byBook];
};
