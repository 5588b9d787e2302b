/** One mould as the Moulds page speaks of it. */
export interface MouldFacts {
  id: string;
  condition: 'ready' | 'dirty' | 'damaged' | 'retired';
  prepped: boolean;
  makes: readonly string[];
  setFor: string;
  piece: {
    name: string;
    filledAt: string;
    customer: string | null;
    stripAt: string | null;
    stays: string | null;
  } | null;
  repairedOn: string | null;
  note: string | null;
  damageNote: string | null;
  turnsToSealing: number | null;
  nextPour: { at: string; customer: string | null } | null;
}

export const mouldPath = (id: string, mark: string): string => `/moulds/${encodeURIComponent(id)}/${mark}`;
