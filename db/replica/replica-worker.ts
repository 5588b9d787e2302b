import { parentPort, workerData } from 'node:worker_threads';
import { type Client, createClient } from '@libsql/client';

/** Which copy is kept of which server's database. */
export interface ReplicaData {
  /** The copy, a `file:` address. */
  url: string;
  syncUrl: string;
  token: string | null;
}

/** What comes of one look at the server: null, or what was in the way. */
export type Synced = { fault: string | null };

const { url, syncUrl, token } = workerData as ReplicaData;

let client: Client | null = null;

/** To open it asks the server already. */
const synced = async (): Promise<Synced> => {
  try {
    client ??= createClient({ url, syncUrl, ...(token === null ? {} : { authToken: token }) });
    await client.sync();
    return { fault: null };
  } catch (error) {
    return { fault: (error as Error).message };
  }
};

parentPort?.on('message', async (told: 'sync' | 'close') => {
  if (told === 'sync') return parentPort?.postMessage(await synced());
  client?.close();
  return parentPort?.close();
});
