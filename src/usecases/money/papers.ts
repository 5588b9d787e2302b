import type { OrderPaper, OrderQuote, PaperKind } from '../../../shared/money.ts';

/** What is kept of an order's papers. */
interface KeptPapers {
  quote: OrderQuote | null;
  papers: readonly OrderPaper[] | null;
}

type Payment = OrderPaper['payments'][number];

/** All quotes and bills of an order, as they were sent and in that order. */
export const papersOf = ({ quote, papers }: KeptPapers): OrderPaper[] => [
  ...(quote ? [{ ...quote, kind: 'quote' as const, number: 1, payments: [] }] : []),
  ...(papers ?? []),
];

/** The last one of a kind; null where none was sent. */
export const lastPaper = (kept: KeptPapers, kind: PaperKind): OrderPaper | null =>
  papersOf(kept).findLast((one) => one.kind === kind) ?? null;

/** What is asked now, as the next paper of its kind: a bill says what has been paid, and no deposit and no day. */
export const nextPaper = (
  kept: KeptPapers,
  kind: PaperKind,
  { deposit, readyOn, ...asked }: OrderQuote,
  payments: readonly (Omit<Payment, 'note'> & { note: string | null })[],
): OrderPaper => {
  const number = 1 + (lastPaper(kept, kind)?.number ?? 0);
  if (kind === 'quote')
    return {
      ...{ ...asked, kind, number, payments: [] },
      ...(deposit === undefined ? {} : { deposit }),
      ...(readyOn === undefined ? {} : { readyOn }),
    };
  const paid = payments.map(({ on, amount, back, note }) => ({ on, amount, back, ...(note === null ? {} : { note }) }));
  return { ...asked, kind, number, payments: paid };
};
