import type { Offer } from '../../src/usecases/orders/order-contents.ts';

export type { Offer };

const GROUPS: Record<Offer['kind'], string> = { kit: 'Kits', casting: 'Single pieces', material: 'Parts' };

/** The choices of a "what" field, under three headings. */
export const whatOptions = (offers: readonly Offer[]) =>
  offers.map(({ what, name, kind, unit }) => ({
    value: what,
    text: kind === 'material' && unit ? `${name} (${unit})` : name,
    group: GROUPS[kind],
  }));
