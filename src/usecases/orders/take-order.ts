import { customerNamed } from '../../../db/stores/customer-store.ts';
import { addOrder, nextOrderId } from '../../../db/stores/order-store.ts';
import { SLIP_WEIGHTS } from '../../../shared/order.ts';
import { done, type Outcome, today, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import type { OrderDraft } from '../typed/order-form.ts';
import { draftFaults } from './order-draft.ts';

/** Takes an order: it gets the next number and its place in the plan. */
export const takeOrder = (context: UseCaseContext, draft: OrderDraft): Promise<Outcome<Changed<{ id: string }>>> =>
  changing(
    context,
    { kind: 'order taken', words: ({ id }) => `Order ${id}${draft.customer && ` for ${draft.customer}`} taken` },
    async (tx, yard) => {
      const day = today(yard.yard.timeZone, context.now);
      const faults = draftFaults(draft, yard, day);
      if (faults.length > 0) return { ok: false, faults };
      const id = await nextOrderId(tx, day);
      await addOrder(tx, {
        id,
        customerId: draft.customer ? await customerNamed(tx, draft.customer, draft.phone || null) : null,
        wantedOn: draft.wantedOn,
        promisedOn: draft.promisedOn,
        heldUntil: draft.heldUntil,
        weight: SLIP_WEIGHTS[draft.slip],
        note: draft.note || null,
        takenAt: context.now,
        lines: draft.lines.map(({ line }) => line),
      });
      return done({ id });
    },
  );
