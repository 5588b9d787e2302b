import { mouldsInOrder } from '../../../db/stores/mould-store.ts';
import type { UseCaseContext } from '../core/context.ts';
import { mouldKind } from '../core/mould-kind.ts';
import { showYardFrame } from './show-yard-frame.ts';

/** Every mould with what it makes and how it is sealed, by kind; scrapped ones apart. */
export const showYardMoulds = async (context: UseCaseContext) => {
  const { yard, yardName, today, guesses } = await showYardFrame(context);
  const names = new Map(yard.castings.map(({ id, name }) => [id, name]));
  const stored = await context.database.read(mouldsInOrder);
  const moulds = stored.map(({ piece, makes, ...mould }) => ({
    ...mould,
    kind: mouldKind(mould.id),
    full: piece !== null,
    makes: makes.map((make) => ({ ...make, name: names.get(make.casting) ?? make.casting })),
    guesses: guesses.filter(({ kind, id }) => kind === 'mould' && id === mould.id).map(({ figure }) => figure),
  }));
  return { yardName, today, moulds, castings: yard.castings.map(({ id, name }) => ({ id, name })) };
};
export type YardMouldsModel = Awaited<ReturnType<typeof showYardMoulds>>;
export type YardMould = YardMouldsModel['moulds'][number];
