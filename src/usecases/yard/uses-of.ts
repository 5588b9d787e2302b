import type { Tx } from '../../../db/open.ts';
import { openOrders, pastOrders } from '../../../db/stores/order-store.ts';
import { piecesToMend } from '../../../db/stores/piece-to-mend-store.ts';
import { listText } from '../../../shared/list-text.ts';
import type { OrderLine } from '../../../shared/order.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { isRetired } from '../../engine/book/mould-state.ts';

/** What can be removed from the yard. */
export type Removable = 'casting' | 'mix' | 'material' | 'mould' | 'kit';

/** What is on record beside the yard file: what orders are for, those over among them, and pieces to mend. */
export interface OnRecord {
  open: readonly { id: string; lines: readonly OrderLine[] }[];
  past: readonly { id: string; lines: readonly OrderLine[] }[];
  toMend: readonly { casting: string }[];
}

const ALL = -1;

export const onRecord = async (tx: Tx): Promise<OnRecord> => ({
  open: await openOrders(tx),
  past: await pastOrders(tx, ALL),
  toMend: await piecesToMend(tx),
});

const MOST_NAMES = 6;

const namesText = (names: readonly string[]): string => {
  const shown = names.length > MOST_NAMES ? names.slice(0, MOST_NAMES - 1) : names;
  const rest = names.length - shown.length;
  const all = rest > 0 ? [...shown, `${rest} more`] : shown;
  return listText(all);
};

/** `counted('is made by', ['900 no. 1'], 'mould')` is ["is made by 1 mould (900 no. 1)"]; nothing for no names. */
const counted = (verb: string, names: readonly string[], one: string, many = `${one}s`): string[] =>
  names.length === 0 ? [] : [`${verb} ${names.length} ${names.length === 1 ? one : many} (${namesText(names)})`];

const namesOf = (entries: readonly { name: string }[]): string[] => entries.map(({ name }) => name);

const inOrders = ({ open, past }: OnRecord, kind: 'casting' | 'material' | 'kit', id: string): string[] => {
  const of = (orders: OnRecord['open']) =>
    orders.filter(({ lines }) => lines.some((line) => line[kind] === id)).map((order) => order.id);
  return [...counted('is in', of(open), 'order'), ...counted('was in', of(past), 'past order')];
};

type Finder = (yard: YardFile, record: OnRecord, id: string) => string[];

const usesOfCasting: Finder = (yard, record, id) => {
  const made = yard.moulds.filter(({ makes }) => makes.some(({ casting }) => casting === id));
  const kits = yard.kits.filter(({ pieces }) => pieces.some(({ casting }) => casting === id));
  const standing = yard.finished.filter(({ casting }) => casting === id).reduce((sum, { count }) => sum + count, 0);
  const aside = record.toMend.filter(({ casting }) => casting === id).length;
  const full = yard.inMould.filter(({ casting }) => casting === id).map(({ mould }) => mould);
  return [
    ...counted(
      'is made by',
      made.map((mould) => mould.id),
      'mould',
    ),
    ...counted('is in', namesOf(kits), 'kit'),
    ...inOrders(record, 'casting', id),
    ...counted('is in', full, 'mould that is not stripped yet', 'moulds that are not stripped yet'),
    ...(aside > 0 ? [aside === 1 ? 'has a piece to mend' : `has ${aside} pieces to mend`] : []),
    ...(standing > 0 ? [`stands in the yard ${standing === 1 ? 'once' : `${standing} times`}`] : []),
  ];
};

const usesOfMix: Finder = (yard, _record, id) =>
  counted(
    'is what',
    namesOf(yard.castings.filter(({ mix }) => mix === id)),
    'panel or piece is cast from',
    'panels or pieces are cast from',
  );

const usesOfMaterial: Finder = (yard, record, id) => {
  const has = (list: readonly { material: string }[]) => list.some(({ material }) => material === id);
  const coming = yard.incoming.filter(({ material }) => material === id).length;
  return [
    ...counted('goes into', namesOf(yard.mixes.filter(({ perBag }) => has(perBag))), 'mix', 'mixes'),
    ...counted(
      'goes into',
      namesOf(yard.castings.filter(({ perPiece, cuts, sheets = [] }) => has(perPiece) || has(cuts) || has(sheets))),
      'panel or piece',
      'panels or pieces',
    ),
    ...counted('goes into', namesOf(yard.kits.filter(({ parts, cuts }) => has(parts) || has(cuts))), 'kit'),
    ...inOrders(record, 'material', id),
    ...(coming > 0 ? ['is on its way'] : []),
  ];
};

const usesOfMould: Finder = (yard, _record, id) => {
  const piece = yard.inMould.find(({ mould }) => mould === id);
  const name = yard.castings.find((one) => one.id === piece?.casting)?.name;
  const mould = yard.moulds.find((one) => one.id === id);
  if (piece) return [`has a piece in it (${name ?? piece.casting})`];
  if (!mould || isRetired(mould)) return [];
  return mould.turnsSinceOil > 0 || mould.condition !== 'ready' ? ['has been poured before'] : [];
};

const usesOfKit: Finder = (_yard, record, id) => inOrders(record, 'kit', id);

const FINDERS: Readonly<Record<Removable, Finder>> = {
  casting: usesOfCasting,
  mix: usesOfMix,
  material: usesOfMaterial,
  mould: usesOfMould,
  kit: usesOfKit,
};

/**
 * What needs a thing and so keeps it from being removed, a phrase each; none when nothing does.
 *
 * Example: ["is made by 2 moulds (900 no. 1 and 900 no. 2)", "is in 1 kit (Pair of panels)"].
 */
export const usesOf = (yard: YardFile, record: OnRecord, kind: Removable, id: string): string[] =>
  FINDERS[kind](yard, record, id);

/** "Panel 900 is made by 2 moulds (900 no. 1 and 900 no. 2) and is in 1 kit (Pair of panels)." */
export const usesText = (name: string, uses: readonly string[]): string => `${name} ${listText(uses)}.`;
