import { once } from 'node:events';
import { setTimeout as pause } from 'node:timers/promises';
import { startThread } from '../start-thread.ts';
import type { ReplicaData, Synced } from './replica-worker.ts';

/** A copy of a server's database in a file of this machine (libSQL: an embedded replica). */
export interface Replica {
  /** Brings it up to what the server has now. What was in the way, in words; null where nothing was. */
  sync(): Promise<string | null>;
  close(): Promise<void>;
}

/** Nobody waits for longer; the thread goes on waiting, and who asks meanwhile is told the same. */
const SYNC_LIMIT_MS = 10_000;
const CLOSE_LIMIT_MS = 2_000;

/** The driver stands still until the server has answered, so that it works in a thread of its own. */
export const openReplica = (data: ReplicaData): Replica => {
  const thread = startThread('replica-worker', import.meta.url, data);
  // It keeps nothing running but what waits for it.
  thread.unref();
  let asked: Promise<Synced> | null = null;
  let broken: string | null = null;
  thread.on('error', (error) => {
    broken = error.message;
  });
  const ended = once(thread, 'exit').catch(() => undefined);
  const ask = async (): Promise<Synced> => {
    const answer = once(thread, 'message');
    thread.ref();
    thread.postMessage('sync');
    const [synced] = (await Promise.race([
      answer,
      ended.then(() => [{ fault: broken ?? 'its thread has ended' }]),
    ])) as [Synced];
    thread.unref();
    asked = null;
    return synced;
  };
  return {
    sync: async () => {
      if (broken !== null) return broken;
      asked ??= ask();
      const late = pause(SYNC_LIMIT_MS, { fault: 'it does not answer' }, { ref: false });
      return (await Promise.race([asked, late])).fault;
    },
    close: async () => {
      thread.ref();
      thread.postMessage('close');
      await Promise.race([ended, pause(CLOSE_LIMIT_MS, undefined, { ref: false })]);
      await thread.terminate();
    },
  };
};
