import type { PouredRecord } from '../../../shared/batch-record.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { type Delivery, lotsUsed } from '../buy/lots-used.ts';
import { bagsPoured } from './pour.ts';
import type { PourWork } from './work-done.ts';

/** What came of each material, by its id. */
export type Deliveries = ReadonlyMap<string, readonly Delivery[]>;

/** Which bags a batch was mixed of: by material, a date each. */
export type BagDates = NonNullable<PouredRecord['bagDates']>;

/** The material of a mix that its bags are of: what it is first made up of; null where it is made up of nothing. */
export const bagOf = (mix: string, { mixes }: Pick<YardFile, 'mixes'>): string | null =>
  mixes.find(({ id }) => id === mix)?.perBag[0]?.material ?? null;

/**
 * Which bags a batch was mixed of: as read off them, and else by the stock book, which uses up first what came first. What no
 * delivery accounts for has no date. `yard` as it was before.
 */
export const bagDatesOf = (work: PourWork, yard: YardFile, deliveries: Deliveries): BagDates => {
  const mixed = bagsPoured(work, yard);
  if (!mixed) return [];
  const read = work.told?.bagDates ?? [];
  const own = bagOf(mixed.mix.id, yard);
  const typed = own === null ? [] : read.map((on) => ({ material: own, on, typed: true as const }));
  const byBook = mixed.mix.perBag
    .filter(({ material }) => typed.length === 0 || material !== own)
    .flatMap(({ material, quantity }) => {
      const onHand = yard.materials.find(({ id }) => id === material)?.onHand ?? 0;
      const days = lotsUsed(onHand, quantity * mixed.bags, deliveries.get(material) ?? []);
      return days.map((on) => ({ material, on }));
    });
  return [...typed, ...byBook];
};
