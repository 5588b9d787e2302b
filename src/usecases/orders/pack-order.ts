import { done, type Outcome, type UseCaseContext } from '../core/context.ts';
import { writtenAt } from '../core/written-at.ts';
import type { Changed } from '../plan/changing.ts';
import { plannedFor, recordingWork } from '../plan/recording-work.ts';
import { orderName, unpackedOrder } from './open-order.ts';

interface Packed {
  name: string;
}

/**
 * An order is packed: its pieces, parts and cut lengths are out of stock, and it waits to be handed over. When the stock
 * book is short of pieces it is refused, unless `evenShort` says that the maker has counted. `at` is when it was
 * packed, as an instant; just now where it is left out.
 */
export const packOrder = async (
  context: UseCaseContext,
  id: string,
  { evenShort, at }: { evenShort: boolean; at?: string | null },
): Promise<Outcome<Changed<Packed>>> => {
  const doneAt = writtenAt(at, context.now);
  if (!doneAt.ok) return doneAt;
  return recordingWork<Packed>(
    context,
    { kind: 'packed', words: ({ name }) => `Packed for ${name}` },
    async (tx, _yard, plan) => {
      const found = await unpackedOrder(tx, id);
      if (!found.ok) return found;
      const { lines } = found.value;
      const work = { kind: 'packed' as const, order: id, lines, evenShort, doneAt: doneAt.value };
      const steps = [{ work: () => done({ ...work, planned: plannedFor(plan, id) }) }];
      return done({ steps, value: { name: orderName(found.value) } });
    },
  );
};
