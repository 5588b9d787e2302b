import type { Tx } from '../../db/open.ts';
import { finishedPieces, type StoredFinished, setFinishedCount } from '../../db/stores/finished-store.ts';
import { addToStock } from '../../db/stores/material-store.ts';
import { freeSetAside, updateOrder } from '../../db/stores/order-store.ts';
import type { PlanFile } from '../../shared/plan.ts';
import { minuteOf } from '../../shared/time.ts';
import { type Changed, changing } from './changing.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from './context.ts';
import { openOrder, orderName } from './open-order.ts';
import { piecesOfOrder } from './pieces-of-order.ts';
import { goodPlan } from './remake-plan.ts';

/** Pieces an order may take now: its own first, then those set aside for nobody. */
const takeable = (stock: readonly StoredFinished[], order: string, now: string): StoredFinished[] => {
  const ready = stock.filter(({ readyAt }) => readyAt === null || minuteOf(readyAt) <= minuteOf(now));
  return [...ready.filter((one) => one.order === order), ...ready.filter((one) => one.order === null)];
};

/** Takes what is there of each piece out of stock; returns how many of each are missing. */
const takePieces = async (tx: Tx, wanted: ReadonlyMap<string, number>, from: StoredFinished[]) => {
  const missing = new Map<string, number>();
  for (const [casting, count] of wanted) {
    let left = count;
    for (const pieces of from.filter((one) => one.casting === casting)) {
      const taken = Math.min(left, pieces.count);
      if (taken > 0) await setFinishedCount(tx, pieces.id, pieces.count - taken);
      left -= taken;
    }
    if (left > 0) missing.set(casting, left);
  }
  return missing;
};

/** Sticks that the plan opens to cut this order's own pieces when it is packed, by material. */
const sticksOpenedFor = (order: string, plan: PlanFile): string[] => {
  const planned = plan.orders.find(({ id }) => id === order);
  const at = planned?.packStart ?? planned?.completesAt;
  return plan.sticks
    .filter(({ openedAt, cuts }) => openedAt === at && cuts[0]?.for === order)
    .map(({ material }) => material);
};

/**
 * The customer has it: its pieces, parts and sticks leave the stock. When the stock book is short of pieces it is refused
 * with the shortfall in words, unless `evenShort` says that the maker has counted and hands over all the same.
 */
export const handOverOrder = (
  context: UseCaseContext,
  id: string,
  { evenShort }: { evenShort: boolean },
): Promise<Outcome<Changed<{ name: string }>>> =>
  changing(
    context,
    { kind: 'order handed over', words: ({ name }) => `Order ${id} handed over (${name})` },
    async (tx, yard) => {
      const found = await openOrder(tx, id);
      if (!found.ok) return found;
      const { pieces, parts } = piecesOfOrder(found.value.lines, yard);
      const missing = await takePieces(tx, pieces, takeable(await finishedPieces(tx), id, context.now));
      if (missing.size > 0 && !evenShort) {
        const nameOf = (casting: string) => yard.castings.find((one) => one.id === casting)?.name ?? casting;
        const short = [...missing].map(([casting, count]) => `${count} × ${nameOf(casting)}`).join(', ');
        return refuse(
          'evenShort',
          `By the stock book these are not in the yard yet: ${short}. Nothing was handed over.`,
        );
      }
      for (const [material, quantity] of parts) await addToStock(tx, material, -quantity);
      const plan = (await goodPlan(tx, context.now))?.plan;
      for (const material of plan ? sticksOpenedFor(id, plan) : []) await addToStock(tx, material, -1);
      await freeSetAside(tx, id);
      const day = today(yard.yard.timeZone, context.now);
      await updateOrder(tx, id, { status: 'handed over', handedOverOn: day, heldUntil: null });
      return done({ name: orderName(found.value) });
    },
  );
