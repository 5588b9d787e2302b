import type { Tx } from '../../../db/open.ts';
import { addAct, changeOfAct } from '../../../db/stores/act-store.ts';
import { done, type Outcome, refuse, type UseCaseContext } from '../core/context.ts';

type Sent = Pick<UseCaseContext, 'act'>;

/** The change that was made by this very act before: it was sent again; null where it is new, or has no key. */
export const changeMadeBy = ({ act, database }: Pick<UseCaseContext, 'act' | 'database'>): Promise<number | null> =>
  act === undefined ? Promise.resolve(null) : database.read((tx) => changeOfAct(tx, act));

/** Refused at `act` where the act was done already, be it undone since or not. */
export const notDoneBefore = async (tx: Tx, { act }: Sent): Promise<Outcome<null>> =>
  act !== undefined && (await changeOfAct(tx, act)) !== null
    ? refuse('act', 'That was done already. Nothing was changed.')
    : done(null);

/** Keeps with a change the act that made it, in the same transaction. */
export const rememberAct = async (tx: Tx, { act }: Sent, change: number): Promise<void> => {
  if (act !== undefined) await addAct(tx, act, change);
};
