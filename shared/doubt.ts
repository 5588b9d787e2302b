/**
 * What is asked before work is recorded that can hardly have been so: done on a day far off, stripped long before its time,
 * poured before it was mixed, more taken than the stock book has. Nothing is recorded until the maker is sure.
 */
export const DOUBTS = ['day', 'early', 'unmixed', 'short'] as const;
/** One of them. */
export type Doubt = (typeof DOUBTS)[number];

/** Where a question stands in a form. */
export const doubtPath = (doubt: Doubt): string => `sure-${doubt}`;
