import { addressWithHash } from '../../../db/stores/calendar-store.ts';
import { type ChangeFacts, showChanges } from '../changes/show-changes.ts';
import type { UseCaseContext } from '../core/context.ts';
import { type Written, writtenIn } from '../core/own-words.ts';
import { hashOf } from '../core/secret.ts';

/** Dates given to customers that moved, as one address gives them out. */
export interface MovedModel {
  yardName: string;
  today: string;
  /** What each id begins with. */
  uidEnding: string;
  /** Changes that moved such a date, the newest first. */
  changes: readonly ChangeFacts[];
  /** The English it is written in. */
  written: Written;
}

/** The dates that moved lately, for whoever has a secret; null where no address has it, or none any more. */
export const showMoved = async (context: UseCaseContext, secret: string): Promise<MovedModel | null> => {
  const hash = await hashOf(secret);
  const address = await context.database.read((tx) => addressWithHash(tx, hash));
  if (!address) return null;
  const { yardName, today, days } = await showChanges(context);
  const changes = days.flatMap((day) => day.changes).filter(({ given }) => given.length > 0);
  return { yardName, today, uidEnding: address.uidEnding, changes, written: await writtenIn(context) };
};
