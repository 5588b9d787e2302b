/** Anything that can be asked for or ordered. */
export interface Offer {
  what: string;
  name: string;
  kind: 'kit' | 'casting' | 'material';
  unit: string;
}

const GROUPS: Record<Offer['kind'], string> = { kit: 'Kits', casting: 'Single pieces', material: 'Parts' };

/** The choices of a "what" field, under three headings. */
export const whatOptions = (offers: readonly Offer[]) =>
  offers.map(({ what, name, kind, unit }) => ({
    value: what,
    text: kind === 'material' && unit ? `${name} (${unit})` : name,
    group: GROUPS[kind],
  }));
