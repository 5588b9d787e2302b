import type { OrderLine } from '../../../shared/order.ts';

/** How a form names what a line asks for: `whatOf({ kit: 'trough', quantity: 2 })` is 'kit:trough'. */
export const whatOf = ({ kit, casting, material }: OrderLine): string => {
  if (kit !== undefined) return `kit:${kit}`;
  return casting !== undefined ? `casting:${casting}` : `material:${material}`;
};

/** The line that a choice in a form stands for, or null when it names nothing of the three kinds. */
export const lineOf = (what: string, quantity: number): OrderLine | null => {
  const [kind, id] = [what.slice(0, what.indexOf(':')), what.slice(what.indexOf(':') + 1)];
  if (kind === 'kit') return { kit: id, quantity };
  if (kind === 'casting') return { casting: id, quantity };
  return kind === 'material' ? { material: id, quantity } : null;
};
