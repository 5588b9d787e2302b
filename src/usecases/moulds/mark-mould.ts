import type { Tx } from '../../../db/open.ts';
import { emptyMould, mouldById, type StoredMould, updateMould } from '../../../db/stores/mould-store.ts';
import type { CameOut } from '../../../shared/piece-to-mend.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { done, type Outcome, refuse, today, type UseCaseContext } from '../core/context.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { putPiece } from '../today/record-strip.ts';

/** What a maker can say about a mould. */
export const MOULD_MARKS = ['cleaned', 'damaged', 'mended', 'sealed', 'scrapped'] as const;
export type MouldMark = (typeof MOULD_MARKS)[number];

/** What a mark may come with: all of it is about damage, or about the piece that is in the mould just now. */
export interface MarkDetails {
  note: string;
  /** The day it is expected to be mended; null when nobody knows. */
  repairedOn: string | null;
  /** What the piece in it is; null when the mould is empty or nobody said. */
  cameOut: CameOut | null;
}

interface Marking {
  tx: Tx;
  mould: StoredMould;
  details: MarkDetails;
  yard: YardFile;
  now: string;
}

type Mark = (marking: Marking) => Promise<Outcome<null>>;

const full = ({ id, piece }: StoredMould, what: string): Outcome<null> | null =>
  piece ? refuse('mark', `${id} has a piece in it. Strip it first, then it can be ${what}.`) : null;

/**
 * The piece in a mould that goes out of use: asked for, since another has to be poured for one that is not good. A good
 * one stays in until it is stripped.
 */
const settlePiece = async ({ tx, mould, details, yard, now }: Marking): Promise<Outcome<null>> => {
  const { piece } = mould;
  const { cameOut } = details;
  if (!piece) return done(null);
  if (cameOut === null) return refuse('cameOut', `Say whether the piece in ${mould.id} is good.`);
  if (cameOut === 'good') return done(null);
  await emptyMould(tx, mould.id);
  await putPiece(tx, yard, { mould: mould.id, piece }, { cameOut, reason: '', now });
  return done(null);
};

const cleaned: Mark = async ({ tx, mould }) => {
  const refused = full(mould, 'cleaned');
  if (refused) return refused;
  if (mould.condition !== 'dirty')
    return refuse('mark', `${mould.id} was not waiting to be cleaned. Nothing was changed.`);
  await updateMould(tx, mould.id, { condition: 'ready', prepped: false });
  return done(null);
};

/** A mould is clean and empty when it is sealed, so a dirty one comes out clean. */
const sealed: Mark = async ({ tx, mould }) => {
  const refused = full(mould, 'sealed');
  if (refused) return refused;
  if (mould.condition === 'retired') return refuse('mark', `${mould.id} is scrapped. Mark it mended first.`);
  const clean = mould.condition === 'dirty' ? { condition: 'ready' as const } : {};
  await updateMould(tx, mould.id, { turnsSinceOil: 0, prepped: false, ...clean });
  return done(null);
};

const damaged: Mark = async (marking) => {
  const { tx, mould, details, yard, now } = marking;
  if (details.repairedOn && details.repairedOn < today(yard.yard.timeZone, now))
    return refuse('repairedOn', 'That day has passed. Leave it empty when nobody knows.');
  const piece = await settlePiece(marking);
  if (!piece.ok) return piece;
  await updateMould(tx, mould.id, {
    condition: 'damaged',
    repairedOn: details.repairedOn,
    damageNote: details.note || null,
    prepped: false,
  });
  return done(null);
};

const mended: Mark = async ({ tx, mould }) => {
  if (mould.condition !== 'damaged' && mould.condition !== 'retired')
    return refuse('mark', `${mould.id} was not out of use. Nothing was changed.`);
  await updateMould(tx, mould.id, { condition: 'ready', repairedOn: null, damageNote: null, prepped: false });
  return done(null);
};

const scrapped: Mark = async (marking) => {
  const { tx, mould, details } = marking;
  const piece = await settlePiece(marking);
  if (!piece.ok) return piece;
  const note = details.note || mould.damageNote;
  await updateMould(tx, mould.id, { condition: 'retired', repairedOn: null, damageNote: note, prepped: false });
  return done(null);
};

const MARKS: Record<MouldMark, Mark> = { cleaned, damaged, mended, sealed, scrapped };

/** Writes down what became of a mould; the plan that comes of it says which dates moved. */
export const markMould = (
  context: UseCaseContext,
  id: string,
  mark: MouldMark,
  details: MarkDetails,
): Promise<Outcome<Changed<null>>> =>
  changing(context, { kind: `mould ${mark}`, words: `${id} marked ${mark}` }, async (tx, yard) => {
    const mould = await mouldById(tx, id);
    if (!mould) return refuse('mark', `There is no mould ${id}.`);
    return MARKS[mark]({ tx, mould, details, yard, now: context.now });
  });
