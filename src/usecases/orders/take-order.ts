import { customerNamed } from '../../../db/stores/customer-store.ts';
import { addOrder, nextOrderId } from '../../../db/stores/order-store.ts';
import { SLIP_WEIGHTS } from '../../../shared/order.ts';
import { todayIn } from '../../engine/book/today-in.ts';
import { done } from '../core/context.ts';
import type { OrderDraft } from '../typed/order-form.ts';
import { draftFaults } from './order-draft.ts';
import { passedDays } from './passed-days.ts';
import type { OrderEdit } from './save-order.ts';

/** Takes an order: it gets the next number and its place in the plan. */
export const takeOrder = (draft: OrderDraft): OrderEdit => ({
  what: { kind: 'order taken', words: ({ id }) => `Order ${id}${draft.customer && ` for ${draft.customer}`} taken` },
  work: async (tx, yard) => {
    const day = todayIn(yard);
    const faults = draftFaults(draft, yard);
    if (faults.length > 0) return { ok: false, faults };
    const id = await nextOrderId(tx, day);
    await addOrder(tx, {
      id,
      customerId: draft.customer ? await customerNamed(tx, draft.customer, draft.phone || null) : null,
      wantedOn: draft.wantedOn,
      notBefore: draft.notBefore,
      promisedOn: draft.promisedOn,
      heldUntil: draft.heldUntil,
      weight: SLIP_WEIGHTS[draft.slip],
      note: draft.note || null,
      address: draft.address || null,
      takenAt: yard.yard.now,
      lines: draft.lines.map(({ line }) => line),
    });
    return done({ id, passed: passedDays(draft, day) });
  },
});
