import { type ServerType, serve } from '@hono/node-server';
import { seedDemo } from '../db/demo/larch-row.ts';
import { type Database, openDatabase } from '../db/open.ts';
import { isEmpty } from '../db/stores/yard-store.ts';
import { type Environment, readEnvironment } from './environment.ts';
import { createApp } from './http/app.ts';
import { today } from './usecases/context.ts';

/** Where the demo's "today" is counted. */
const DEMO_ZONE = 'Europe/Dublin';
/** Requests under way get this long to end before the server goes down without them. */
const LAST_REQUESTS_MS = 3_000;

/** The clock, in whole minutes. */
const now = (): string => `${new Date().toISOString().slice(0, 16)}:00Z`;

const refuseToStart = (words: readonly string[]): never => {
  for (const line of words) console.error(line);
  process.exit(1);
};

/** What lies behind an error, however often it was wrapped. */
const reasonOf = (error: unknown): string => {
  if (!(error instanceof Error)) return String(error);
  return error.cause === undefined ? error.message : reasonOf(error.cause);
};

const openWithDemo = async ({ databaseUrl, databaseToken }: Environment): Promise<Database> => {
  const database = await openDatabase({ url: databaseUrl, ...(databaseToken ? { token: databaseToken } : {}) });
  await database.write(async (tx) => {
    if (await isEmpty(tx)) await seedDemo(tx, today(DEMO_ZONE, now()), now());
  });
  return database;
};

const listen = ({ host, port }: Environment, database: Database): ServerType => {
  const server = serve({ fetch: createApp({ database, now }).fetch, hostname: host, port }, (address) => {
    const name = address.family === 'IPv6' ? `[${address.address}]` : address.address;
    console.log(`Mould Rota is at http://${name}:${address.port}`);
  });
  server.on('error', (error: NodeJS.ErrnoException) => {
    const taken = error.code === 'EADDRINUSE';
    const reason = taken ? `Port ${port} is taken. Set PORT to another one.` : `Cannot listen: ${error.message}`;
    void database.close().finally(() => refuseToStart([reason]));
  });
  return server;
};

const closeOnSignal = (server: ServerType, database: Database): void => {
  const close = () => {
    const end = () => void database.close().finally(() => process.exit(0));
    const late = setTimeout(end, LAST_REQUESTS_MS);
    server.close(() => {
      clearTimeout(late);
      end();
    });
  };
  process.once('SIGTERM', close);
  process.once('SIGINT', close);
};

const read = readEnvironment(process.env);
if (!read.ok) refuseToStart(read.faults);
else {
  const database = await openWithDemo(read.environment).catch((error: unknown) =>
    refuseToStart([`The database at ${read.environment.databaseUrl} cannot be opened: ${reasonOf(error)}`]),
  );
  closeOnSignal(listen(read.environment, database), database);
}
