import type { Tx } from '../../../db/open.ts';
import { addFinished } from '../../../db/stores/finished-store.ts';
import { emptyMould, mouldById, type StoredMould, updateMould } from '../../../db/stores/mould-store.ts';
import { addPieceToMend } from '../../../db/stores/piece-to-mend-store.ts';
import type { CameOut } from '../../../shared/piece-to-mend.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { writtenAt } from '../core/written-at.ts';
import { afterStrip } from '../plan/carry-on.ts';
import { type Changed, changing } from '../plan/changing.ts';
import { readyFrom } from '../plan/ready-from.ts';

export interface StripRecord {
  mould: string;
  cameOut: CameOut;
  /** What is wrong with a piece that is not good, in a few words; empty where nobody said. */
  reason: string;
  /** When, as an instant; just now where it is left out. */
  at?: string | null;
}

const CAME_OUT_WORDS: Readonly<Record<CameOut, string>> = {
  good: '',
  mend: ', the piece is to be mended',
  scrap: ', the piece is scrapped',
};

/** "900 no. 1 stripped, the piece is to be mended: corner broken off" */
const stripWords = ({ mould, cameOut, reason }: StripRecord): string => {
  const why = cameOut === 'good' || reason === '' ? '' : `: ${reason}`;
  return `${mould} stripped${CAME_OUT_WORDS[cameOut]}${why}`;
};

/** A piece that is out of its mould: finished and curing on, kept aside to be mended, or gone. */
export const putPiece = async (
  tx: Tx,
  yard: YardFile,
  { mould, piece }: { mould: string; piece: NonNullable<StoredMould['piece']> },
  { cameOut, reason, now }: Pick<StripRecord, 'cameOut' | 'reason'> & { now: string },
): Promise<void> => {
  const { casting, filledAt, order } = piece;
  if (cameOut === 'good')
    await addFinished(tx, { casting, count: 1, readyAt: readyFrom(yard, piece, minuteOf(now)), order });
  if (cameOut === 'mend')
    await addPieceToMend(tx, { casting, mould, filledAt, strippedAt: now, reason: reason || null });
};

/** Writes a strip down inside a transaction, as of an instant. */
export const stripMould = async (tx: Tx, yard: YardFile, record: StripRecord, now: string): Promise<Outcome<null>> => {
  const id = record.mould;
  const mould = await mouldById(tx, id);
  if (!mould?.piece) return refuse('mould', `${id} has no piece in it by the stock book. Nothing was changed.`);
  await emptyMould(tx, id);
  await putPiece(tx, yard, { mould: id, piece: mould.piece }, { ...record, now });
  const outOfUse = mould.condition === 'damaged' || mould.condition === 'retired';
  await updateMould(tx, id, { condition: outOfUse ? mould.condition : 'dirty', prepped: false });
  return done(null);
};

/**
 * A piece is out of its mould, and the mould is dirty. A good piece cures on until it is fit to go out by the plan's
 * temperatures. One to mend counts for nothing until it is mended, one that is scrapped is gone: where an order needs it,
 * another is planned.
 */
export const recordStrip = async (context: UseCaseContext, record: StripRecord): Promise<Outcome<Changed<null>>> => {
  const at = writtenAt(record.at, context.now);
  if (!at.ok) return at;
  return changing(
    context,
    { kind: 'stripped', words: stripWords(record) },
    (tx, yard) => stripMould(tx, yard, record, context.now),
    record.cameOut === 'good' ? { carryOn: afterStrip(record.mould, at.value) } : {},
  );
};
