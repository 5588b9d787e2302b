import type { Tx } from '../../../db/open.ts';
import { finishedPieces, type StoredFinished } from '../../../db/stores/finished-store.ts';
import { freeSetAside, updateOrder } from '../../../db/stores/order-store.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { writtenAt } from '../core/written-at.ts';
import { afterPack, type Places } from '../plan/carry-on.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { takeOrderGoods } from '../plan/take-order-goods.ts';
import { orderName, unpackedOrder } from './open-order.ts';

interface Packed {
  name: string;
  places: Places;
}

/** By the place of a finished piece in the list, its place in a later one; those that are gone have none. */
const placesIn = (before: readonly StoredFinished[], after: readonly StoredFinished[]): Places =>
  new Map(
    before.flatMap(({ id }, place): [number, number][] => {
      const now = after.findIndex((one) => one.id === id);
      return now < 0 ? [] : [[place, now]];
    }),
  );

/** Packs an order inside a transaction, as of an instant. */
export const packGoods = async (
  tx: Tx,
  yard: YardFile,
  { order: id, evenShort, now }: { order: string; evenShort: boolean; now: string },
): Promise<Outcome<Packed>> => {
  const found = await unpackedOrder(tx, id);
  if (!found.ok) return found;
  const before = await finishedPieces(tx);
  const short = await takeOrderGoods(tx, found.value, yard, now);
  if (short && !evenShort)
    return refuse(
      'evenShort',
      `By the stock book these are not in the yard, or not fit to go out yet: ${short}. Nothing was packed.`,
    );
  await freeSetAside(tx, id);
  await updateOrder(tx, id, { packedAt: now });
  return done({ name: orderName(found.value), places: placesIn(before, await finishedPieces(tx)) });
};

/**
 * An order is packed: its pieces, parts and cut lengths are out of stock, and it waits to be handed over. When the stock
 * book is short of pieces it is refused, unless `evenShort` says that the maker has counted. `at` is when it was
 * packed, as an instant; just now where it is left out.
 */
export const packOrder = async (
  context: UseCaseContext,
  id: string,
  { evenShort, at: when }: { evenShort: boolean; at?: string | null },
): Promise<Outcome<Changed<Packed>>> => {
  const at = writtenAt(when, context.now);
  if (!at.ok) return at;
  return changing<Packed>(
    context,
    { kind: 'packed', words: ({ name }) => `Packed for ${name}` },
    (tx, yard) => packGoods(tx, yard, { order: id, evenShort, now: context.now }),
    { carryOn: afterPack(id, at.value) },
  );
};
