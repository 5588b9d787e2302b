import { customerNamed } from '../../../db/stores/customer-store.ts';
import { replaceLines, updateOrder } from '../../../db/stores/order-store.ts';
import { SLIP_WEIGHTS, slipOfWeight } from '../../../shared/order.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { done, refuse } from '../core/context.ts';
import { measuresOf } from '../typed/measures.ts';
import type { OrderDraft } from '../typed/order-form.ts';
import { unpackedOrder } from './open-order.ts';
import { offersOf } from './order-contents.ts';
import { draftFaults } from './order-draft.ts';
import { passedDays } from './passed-days.ts';
import type { OrderEdit } from './save-order.ts';
import { orderFormFields, orderVersion } from './show-order-form.ts';

/** Where it is said that somebody changed the order while its form was filled in. */
export const VERSION = 'version';
const CHANGED_MEANWHILE =
  'This order was changed while you did. What is different now is said beside it, and what you typed is still here. Save again to have it so.';

/** Writes an open order anew, under the same number and in the same place. */
export const editOrder = (id: string, draft: OrderDraft): OrderEdit => ({
  what: { kind: 'order edited', words: `Order ${id} changed` },
  work: async (tx, yard) => {
    const found = await unpackedOrder(tx, id);
    if (!found.ok) return found;
    const order = found.value;
    const { system } = await measuresOf(tx);
    const version = orderVersion(orderFormFields(order, offersOf(yard, system), system));
    if (draft.version !== undefined && draft.version !== version) return refuse(VERSION, CHANGED_MEANWHILE);
    const others = { ...yard, orders: yard.orders.filter((one) => one.id !== id) };
    const faults = draftFaults(draft, others, order);
    if (faults.length > 0) return { ok: false, faults };
    await updateOrder(tx, id, {
      customerId: draft.customer ? await customerNamed(tx, draft.customer, draft.phone || null) : null,
      wantedOn: draft.wantedOn,
      notBefore: draft.notBefore,
      promisedOn: draft.promisedOn,
      heldUntil: draft.heldUntil,
      // A weight that came in by a file and stands between two answers stays as it is while the answer does.
      weight: draft.slip === slipOfWeight(order.weight) ? order.weight : SLIP_WEIGHTS[draft.slip],
      note: draft.note || null,
      address: draft.address || null,
    });
    await replaceLines(
      tx,
      id,
      draft.lines.map(({ line }) => line),
    );
    return done({ id, passed: passedDays(draft, todayIn(yard), order) });
  },
});
