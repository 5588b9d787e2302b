import type { OrderDraft } from '../../src/usecases/typed/order-form.ts';

/** An order form in which nothing was filled in: tests say what was. */
export const BLANK_DRAFT: OrderDraft = {
  ...{ customer: '', phone: '', address: '', note: '', wantedOn: null, notBefore: null, promisedOn: null },
  ...{ heldUntil: null, next: {}, slip: 'rather not', unread: [], lines: [] },
};
