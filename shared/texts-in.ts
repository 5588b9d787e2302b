/**
 * Every text within a value, however deep.
 *
 * `textsIn({ name: 'Ann', lines: [{ kit: 'pair', quantity: 2 }] })` is ['Ann', 'pair'].
 */
export const textsIn = (value: unknown): string[] => {
  if (typeof value === 'string') return [value];
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(textsIn) : [];
};
