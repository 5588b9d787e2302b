import { handOver } from '../../engine/book/pack.ts';
import { sticksFor } from '../../engine/book/sticks-cut.ts';
import { done, type Outcome, today, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { recordPiecesTaken } from '../plan/pieces-recorded.ts';
import { plannedFor, writeBooked } from '../plan/recording-work.ts';
import { hasLeftStock, openOrder, orderName } from './open-order.ts';

/**
 * The customer has it: its pieces, parts and cut lengths leave the stock, unless it was packed and they have left it
 * already. When the stock book is short of pieces it is refused with the shortfall in words, unless `evenShort` says that
 * the maker has counted and hands over all the same.
 */
export const handOverOrder = (
  context: UseCaseContext,
  id: string,
  { evenShort }: { evenShort: boolean },
): Promise<Outcome<Changed<{ name: string }>>> =>
  changing(
    context,
    { kind: 'order handed over', words: ({ name }) => `Order ${id} handed over (${name})` },
    async (tx, yard, _change, plan) => {
      const found = await openOrder(tx, id);
      if (!found.ok) return found;
      const { lines } = found.value;
      const on = today(yard.yard.timeZone, context.now);
      const cutFrom = sticksFor(plan?.sticks ?? [], id);
      const taking = { order: id, lines, planned: plannedFor(plan, id), evenShort, cutFrom };
      const isPacked = hasLeftStock(found.value);
      const booked = handOver(yard, { ...taking, isPacked, on });
      if (!isPacked) await recordPiecesTaken(tx, yard, booked, { order: id, lines });
      const written = await writeBooked(tx, booked);
      return written.ok ? done({ name: orderName(found.value) }) : written;
    },
  );
