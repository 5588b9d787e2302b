import { networkInterfaces } from 'node:os';
import { type ServerType, serve } from '@hono/node-server';
import { CANNOT_WRITE_WORDS, cannotWrite } from '../db/cannot-write.ts';
import { seedDemo } from '../db/demo/larch-row.ts';
import { filePath } from '../db/file-path.ts';
import { type Database, openDatabase } from '../db/open.ts';
import { photoFolder, photosBeside } from '../db/photo-folder.ts';
import { isEmpty } from '../db/stores/yard-store.ts';
import { startBackground } from './background.ts';
import { databaseAddress, type Environment, readEnvironment } from './environment.ts';
import { FORECAST_ADDRESS, forecastClient } from './forecast-client.ts';
import { createApp } from './http/app.ts';
import type { Log } from './http/request-log.ts';
import { nightlyBackups } from './nightly-backup.ts';
import { steadyClock } from './steady-clock.ts';
import { type FirstCode, hasOwner, newFirstCode } from './usecases/access/first-owner.ts';
import { type Background, today } from './usecases/core/context.ts';

/** Where the demo's "today" is counted. */
const DEMO_ZONE = 'Europe/Dublin';
/** No search for a better plan is known that would never end; one that took so long would be of no use any more. */
const IMPROVEMENT_LIMIT_MS = 60_000;
/** Nobody looks at a page for longer than this to see it filled in. */
const QUESTION_LIMIT_MS = 20_000;
/** Requests under way get this long to end before the server goes down without them. */
const LAST_REQUESTS_MS = 3_000;

const now = steadyClock(Date.now, console.error);

const refuseToStart = (words: readonly string[]): never => {
  for (const line of words) console.error(line);
  process.exit(1);
};

/** What lies behind an error, however often it was wrapped. */
const messageOf = (error: unknown): string => {
  if (!(error instanceof Error)) return String(error);
  return error.cause === undefined ? error.message : messageOf(error.cause);
};

const reasonOf = (error: unknown): string => {
  const why = cannotWrite(error);
  return why ? CANNOT_WRITE_WORDS[why] : messageOf(error);
};

const openWithDemo = async (environment: Environment): Promise<Database> => {
  const database = await openDatabase(databaseAddress(environment));
  // Looked at first: a server that is away just now takes nothing, and need not.
  if (await database.read(isEmpty))
    await database.write(async (tx) => {
      if (await isEmpty(tx)) await seedDemo(tx, today(DEMO_ZONE, now()), now());
    });
  return database;
};

const firstWords = (code: string): string =>
  `Others can get here, and nobody has a password yet. The first visit asks for this code, once, within half an hour: ${code}`;

/** Nobody comes in from elsewhere without a password: where nobody has one, a code that is shown here and nowhere else is asked for. */
const firstCodeShown = async ({ isOneDesk }: Environment, database: Database): Promise<FirstCode | null> => {
  if (isOneDesk || (await hasOwner({ database }))) return null;
  const { code, kept } = await newFirstCode(now());
  console.log(firstWords(code));
  return kept;
};

const backgroundOf = (database: Database) =>
  startBackground({
    ...{ database, now, tell: console.error },
    ...{ improvementLimitMs: IMPROVEMENT_LIMIT_MS, questionLimitMs: QUESTION_LIMIT_MS },
  });

/** Every address that this machine has in its networks just now: those come and go. */
const addressesHere = (): string[] =>
  Object.values(networkInterfaces()).flatMap((cards = []) => cards.map(({ address }) => address));

/** Photos lie beside the database, where that is a file of this machine alone. */
const photosOf = ({ databaseUrl, databaseSyncUrl }: Environment) => {
  const path = filePath(databaseUrl);
  return path === null || databaseSyncUrl !== undefined ? {} : { photos: photoFolder(photosBeside(path)) };
};

/** A line of JSON each, with its instant, where that is asked for: as programs read it that gather logs. */
const logOf = ({ isLogged }: Environment): Log | undefined =>
  isLogged ? (entry) => console.log(JSON.stringify({ at: new Date().toISOString(), ...entry })) : undefined;

const listen = (
  environment: Environment,
  database: Database,
  background: Background,
  firstCode: FirstCode | null,
): ServerType => {
  const { host, port, hosts, isOneDesk, publicAddress, publicPath } = environment;
  const { fetch } = createApp({
    ...{ database, now, background, ...photosOf(environment), forecast: forecastClient(FORECAST_ADDRESS) },
    door: { isOneDesk, hosts, addresses: addressesHere, publicAddress, path: publicPath },
    log: logOf(environment),
    firstCode,
  });
  const server = serve({ fetch, hostname: host, port }, (address) => {
    const name = address.family === 'IPv6' ? `[${address.address}]` : address.address;
    console.log(`Mould Rota is at http://${name}:${address.port}${publicPath}`);
    // The first page then has its plan ready, and a better one is looked for before anybody has changed anything.
    background.planMade();
  });
  server.on('error', (error: NodeJS.ErrnoException) => {
    const taken = error.code === 'EADDRINUSE';
    const reason = taken ? `Port ${port} is taken. Set PORT to another one.` : `Cannot listen: ${error.message}`;
    void database.close().finally(() => refuseToStart([reason]));
  });
  return server;
};

/** A backup every night, where that was asked for. */
const backUpNightly = ({ backups, databaseUrl }: Environment): void => {
  const path = filePath(databaseUrl);
  if (backups && path !== null) nightlyBackups({ path, ...backups, now, tell: console.error });
};

const closeOnSignal = (server: ServerType, database: Database, background: { close(): Promise<void> }): void => {
  const close = () => {
    const end = async () => {
      await background.close();
      await database.close().finally(() => process.exit(0));
    };
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
  const firstCode = await firstCodeShown(read.environment, database);
  backUpNightly(read.environment);
  const background = backgroundOf(database);
  closeOnSignal(listen(read.environment, database, background, firstCode), database, background);
}
