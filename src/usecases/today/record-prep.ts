import type { Tx } from '../../../db/open.ts';
import { mouldById, updateMould } from '../../../db/stores/mould-store.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';
import { writtenAt } from '../core/written-at.ts';
import { afterPrep } from '../plan/carry-on.ts';
import { type Changed, changing } from '../plan/changing.ts';

export interface PrepRecord {
  mould: string;
  casting: string;
  /** It got its sealing coat. */
  sealed: boolean;
  /** When, as an instant; just now where it is left out. */
  at?: string | null;
}

/** Writes a set-up down inside a transaction. */
export const prepareMould = async (tx: Tx, prep: PrepRecord): Promise<Outcome<null>> => {
  const mould = await mouldById(tx, prep.mould);
  if (!mould) return refuse('mould', `There is no mould ${prep.mould}.`);
  if (mould.piece) return refuse('mould', `${mould.id} has a piece in it. Strip it first. Nothing was changed.`);
  if (mould.condition === 'damaged' || mould.condition === 'retired')
    return refuse('mould', `${mould.id} is out of use. Mark it mended first. Nothing was changed.`);
  if (!mould.makes.some(({ casting }) => casting === prep.casting))
    return refuse('mould', `${mould.id} does not make that piece. Nothing was changed.`);
  const sealed = prep.sealed ? { turnsSinceOil: 0 } : {};
  await updateMould(tx, mould.id, { condition: 'ready', prepped: true, setFor: prep.casting, ...sealed });
  return done(null);
};

/** A mould is clean, set up for a piece (and sealed, where that was due): nothing is left to do before the pour. */
export const recordPrep = async (context: UseCaseContext, prep: PrepRecord): Promise<Outcome<Changed<null>>> => {
  const at = writtenAt(prep.at, context.now);
  if (!at.ok) return at;
  return changing(
    context,
    { kind: 'prepared', words: `${prep.mould} is ready to pour` },
    (tx) => prepareMould(tx, prep),
    { carryOn: afterPrep(prep.mould, prep.casting, at.value) },
  );
};
