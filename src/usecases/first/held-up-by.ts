import type { QuoteLimit } from '../../../shared/quote.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { mouldKind, mouldsFor } from '../../engine/book/mould-kind.ts';

/** What holds a date, in the names of the yard. For moulds: how many there are, and what they are called together. */
export type HeldUpBy =
  | { limit: 'mould'; count: number; kind: string | null; makes: string }
  | { limit: 'other'; kind: string; name: string | null };

const heldUpByMoulds = (yard: YardFile, casting: string): HeldUpBy => {
  const moulds = mouldsFor(yard, casting);
  const kinds = new Set(moulds.map(({ id }) => mouldKind(id)));
  return {
    limit: 'mould',
    count: moulds.length,
    kind: kinds.size === 1 ? [...kinds][0]! : null,
    makes: yard.castings.find(({ id }) => id === casting)?.name ?? casting,
  };
};

/** The limit with the largest gain, which is the first; null when nothing that was tried brings the date forward. */
export const heldUpBy = (yard: YardFile, limits: readonly QuoteLimit[]): HeldUpBy | null => {
  const [first] = limits;
  if (!first) return null;
  if (first.limit === 'mould' && first.what !== undefined) return heldUpByMoulds(yard, first.what);
  const material = first.limit === 'material' && yard.materials.find(({ id }) => id === first.what);
  return { limit: 'other', kind: first.limit, name: material ? material.name : (first.what ?? null) };
};
