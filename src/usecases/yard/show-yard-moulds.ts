import { sizesOfCastings } from '../../../db/stores/casting-size-store.ts';
import { mouldsInOrder, type StoredMould } from '../../../db/stores/mould-store.ts';
import { mouldKind } from '../../engine/book/mould-kind.ts';
import type { UseCaseContext } from '../core/context.ts';
import type { Named, PageHead } from '../core/page-parts.ts';
import { showYardFrame } from './show-yard-frame.ts';

/** A mould as its line and its form show it. */
export interface YardMould extends Omit<StoredMould, 'piece' | 'makes'> {
  kind: string;
  /** Of the piece that it is set for; null where nobody said. */
  lengthMm: number | null;
  /** A piece is in it. */
  full: boolean;
  makes: readonly { casting: string; name: string; changeMinutes: number }[];
  /** Names of the figures that are guesses. */
  guesses: readonly string[];
}

/** Every mould, with the pieces it could make. */
export interface YardMouldsModel extends PageHead {
  moulds: readonly YardMould[];
  castings: readonly Named[];
}

/** Every mould with what it makes and how it is sealed, by kind; scrapped ones apart. */
export const showYardMoulds = async (context: UseCaseContext): Promise<YardMouldsModel> => {
  const { yard, yardName, today, guesses } = await showYardFrame(context);
  const names = new Map(yard.castings.map(({ id, name }) => [id, name]));
  const { stored, sizes } = await context.database.read(async (tx) => ({
    stored: await mouldsInOrder(tx),
    sizes: await sizesOfCastings(tx),
  }));
  const moulds = stored.map(({ piece, makes, ...mould }) => ({
    ...mould,
    kind: mouldKind(mould.id),
    lengthMm: sizes.find(({ casting }) => casting === mould.setFor)?.length.mm ?? null,
    full: piece !== null,
    makes: makes.map((make) => ({ ...make, name: names.get(make.casting) ?? make.casting })),
    guesses: guesses.filter(({ kind, id }) => kind === 'mould' && id === mould.id).map(({ figure }) => figure),
  }));
  return { yardName, today, moulds, castings: yard.castings.map(({ id, name }) => ({ id, name })) };
};
