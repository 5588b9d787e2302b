import { randomUUID } from 'node:crypto';
import { setTimeout as pause } from 'node:timers/promises';
import { type Client, LibsqlBatchError } from '@libsql/client';
import { PrimaryAway, unreached } from '../away.ts';
import { isBusy, whileBusy } from '../busy.ts';
import type { Tx } from '../transaction.ts';
import { rehearse } from './rehearse.ts';
import type { Replica } from './replica.ts';
import { asNext, lastShipment, takenMark } from './shipments.ts';

/** Others may write as often as this while one write is under way. */
const MOST_TRIES = 200;
const MOST_LOST = 3;
const PAUSE_MS = 250;

interface ShipParts {
  /** Opens the file of the replica; used by one write at a time. */
  near: Client;
  /** Asks the server itself. */
  far: Client;
  replica: Pick<Replica, 'sync'>;
  /** Whether the server was away when it was last asked: then nobody waits for it any more. */
  isAway: () => boolean;
  /** How long to wait for a server that went away just now. */
  patienceMs: number;
}

type Sent = 'taken' | 'older' | 'busy' | PrimaryAway;

/** The first statement is the number that comes next: who has it already wrote something that the work did not see. */
const isOlder = (error: unknown): boolean =>
  error instanceof LibsqlBatchError && error.statementIndex === 0 && /constraint/i.test(error.message);

const awayBy = (error: unknown): PrimaryAway | null => {
  const why = unreached(error);
  return why && new PrimaryAway(why.isUnknown, error);
};

const sentTo = async (far: Client, writes: Parameters<Client['batch']>[0]): Promise<Sent> => {
  try {
    await far.batch(writes, 'write');
    return 'taken';
  } catch (error) {
    if (isOlder(error)) return 'older';
    if (isBusy(error)) return 'busy';
    const away = awayBy(error);
    if (away) return away;
    throw error;
  }
};

/** A server that is started anew is waited for. What is in the way in the end; null once the replica has all that the server has. */
const caughtUp = async ({ replica, patienceMs }: Pick<ShipParts, 'replica' | 'patienceMs'>): Promise<string | null> => {
  const until = Date.now() + patienceMs;
  for (;;) {
    const fault = await replica.sync();
    if (fault === null || Date.now() > until) return fault;
    await pause(PAUSE_MS);
  }
};

const rehearsedOn = <T>(near: Client, work: (tx: Tx) => Promise<T>) =>
  whileBusy(
    () => rehearse(near, async (tx) => ({ last: await lastShipment(tx), value: await work(tx) })),
    async () => near.reconnect(),
  );

/**
 * One write: the work is rehearsed on the replica, and all that it would write is sent to the server at once, which takes it
 * only as the next after those that the replica has. Else the replica is brought up to date and the work is done anew. The
 * replica has what was written when this ends, unless the server went away just then.
 * Throws `PrimaryAway` where the server does not answer; nothing was written then, unless that is unknown.
 */
export const shipped = async <T>(parts: ShipParts, work: (tx: Tx) => Promise<T>): Promise<T> => {
  const { near, far, replica, isAway } = parts;
  const id = randomUUID();
  const values = new Map<string, T>();
  const lost: PrimaryAway[] = [];
  for (let tries = 1; tries <= MOST_TRIES && lost.length <= MOST_LOST; tries += 1) {
    const { result, writes } = await rehearsedOn(near, work);
    if (writes.length === 0) return result.value;
    const mark = `${id} ${tries}`;
    values.set(mark, result.value);
    const sent = await sentTo(far, [...asNext(result.last, mark), ...writes]);
    if (sent instanceof PrimaryAway) lost.push(sent);
    if (sent instanceof PrimaryAway && isAway() && lost.every(({ isUnknown }) => !isUnknown)) throw sent;
    const fault = sent === 'taken' ? await replica.sync() : await caughtUp(parts);
    if (sent === 'taken') return result.value;
    if (fault !== null) throw lost.find(({ isUnknown }) => isUnknown) ?? new PrimaryAway(false, new Error(fault));
    // One that seemed lost may have come through.
    const taken = await takenMark(near, [...values.keys()]);
    if (taken !== null) return values.get(taken) as T;
    if (sent === 'busy') await pause(PAUSE_MS * Math.random());
  }
  throw lost.at(-1) ?? new Error('others have been writing to the server all this while');
};
