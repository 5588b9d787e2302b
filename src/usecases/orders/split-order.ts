import { addOrder, nextOrderId, replaceLines } from '../../../db/stores/order-store.ts';
import { asksOf } from '../../../shared/asked-for.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { unpackedOrder } from './open-order.ts';
import { parcelsNeeded } from './parcels.ts';
import { shareMoney } from './share-money.ts';

const wordsOf = ({ ids }: { ids: readonly string[] }): string => {
  const [first, ...others] = ids;
  return `Order ${first} split: the rest is ${others.join(', ')}`;
};

/**
 * Splits an order that no session is long enough to pack into as many as it takes, of whole kits: the first keeps its
 * number, the others get numbers of their own, with the same customer and dates. Each is packed in a session, and
 * has a share of the price and of what was paid, by its pieces.
 */
export const splitOrder = (context: UseCaseContext, id: string): Promise<Outcome<Changed<{ ids: string[] }>>> =>
  changing(context, { kind: 'order split', words: wordsOf }, async (tx, yard) => {
    const found = await unpackedOrder(tx, id);
    if (!found.ok) return found;
    const {
      customer: _customer,
      lines,
      status: _status,
      handedOverOn: _on,
      packedAt: _at,
      packedMinutes: _minutes,
      ...facts
    } = found.value;
    const parcels = parcelsNeeded(lines, yard);
    if (!parcels) return refuse('order', `Order ${id} does not have to be split. Nothing was changed.`);
    const [first, ...others] = parcels;
    await replaceLines(tx, id, first!);
    const ids = [id];
    for (const parcel of others) {
      const next = await nextOrderId(tx, todayIn(yard));
      ids.push(next);
      const note = [`Part ${ids.length} of ${id}.`, facts.note].filter(Boolean).join(' ');
      await addOrder(tx, { ...facts, id: next, note, takenAt: yard.yard.now, lines: parcel });
    }
    const asks = asksOf(yard.kits);
    const pieces = parcels.map((parcel) => parcel.reduce((sum, line) => sum + asks(line), 0));
    await shareMoney(tx, ids, pieces);
    return done({ ids });
  });
