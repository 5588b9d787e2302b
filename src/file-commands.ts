import { readFileSync } from 'node:fs';
import { primaryAway } from '../db/away.ts';
import { isBusy } from '../db/busy.ts';
import { CANNOT_WRITE_WORDS, cannotWrite } from '../db/cannot-write.ts';
import { type Database, openDatabase } from '../db/open.ts';
import { keptLines } from '../db/stores/kept-ready-store.ts';
import { englishOfYard } from '../db/stores/units-store.ts';
import { isEmpty, loadYardFile } from '../db/stores/yard-store.ts';
import type { English } from '../shared/english.ts';
import type { Fault } from '../shared/fault.ts';
import type { OrderLine } from '../shared/order.ts';
import type { YardFile } from '../shared/yard-file.ts';
import type { YardRecord } from '../shared/yard-record.ts';
import { type Say, sayIn } from '../views/words/own-words.ts';
import { asOf } from './engine/book/as-of.ts';
import { databaseAddress, readEnvironment } from './environment.ts';
import { makeOwner } from './usecases/access/sign-in.ts';
import type { Outcome, UseCaseContext } from './usecases/core/context.ts';
import type { Difference } from './usecases/files/archive-differences.ts';
import { TABLE_KINDS } from './usecases/files/csv-columns.ts';
import { exportArchive, exportYard, type KeptFile } from './usecases/files/export-file.ts';
import { exportTable } from './usecases/files/export-table.ts';
import { type FileEffect, loadFile, readUpload, tryFile } from './usecases/files/load-file.ts';
import { sparesByOf } from './usecases/plan/kept-ready.ts';
import type { PromiseMove } from './usecases/plan/promises-moved.ts';
import type { UnkeptDate } from './usecases/plan/save-edit.ts';

type Read<T> = { ok: true; value: T } | { ok: false; faults: Fault[] };

const wrong = (path: string, message: string): { ok: false; faults: Fault[] } => ({
  ok: false,
  faults: [{ path, message }],
});

/** The clock, in whole minutes. */
const now = (): string => `${new Date().toISOString().slice(0, 16)}:00Z`;

/** Waited for in vain; what a process cannot write it writes none of. */
const HELD = wrong(
  'DATABASE_URL',
  'another process has been writing to the database all this while; nothing was changed, so try again later',
);

/** A server's database by a copy for as long as this takes: the program may be running on the one that is kept. */
const forNow = ({ url, syncUrl = url, ...rest }: ReturnType<typeof databaseAddress>) => ({ ...rest, url: syncUrl });

const AWAY = wrong('DATABASE_URL', 'the database server does not answer; nothing was changed, so try again later');
const UNKNOWN = wrong(
  'DATABASE_URL',
  'the database server was lost while it was told; see whether it has it before doing it again',
);

/** Works on the database of DATABASE_URL. The program may be running on it. */
const onDatabase = async <T>(work: (context: UseCaseContext) => Promise<Read<T>>): Promise<Read<T>> => {
  const read = readEnvironment(process.env);
  if (!read.ok) return { ok: false, faults: read.faults.map((message) => ({ path: 'environment', message })) };
  const address = databaseAddress(read.environment);
  let database: Database;
  try {
    database = await openDatabase(forNow(address));
  } catch (error) {
    if (isBusy(error)) return HELD;
    const why = cannotWrite(error);
    const reason = why ? CANNOT_WRITE_WORDS[why] : (error as Error).message;
    return wrong('DATABASE_URL', `the database at ${address.url} cannot be opened: ${reason}`);
  }
  try {
    return await work({ database, now: now() });
  } catch (error) {
    if (isBusy(error)) return HELD;
    const away = primaryAway(error);
    if (away) return away.isUnknown ? UNKNOWN : AWAY;
    const why = cannotWrite(error);
    if (why) return wrong('DATABASE_URL', `nothing was changed: ${CANNOT_WRITE_WORDS[why]}`);
    throw error;
  } finally {
    await database.close();
  }
};

/** Makes an owner by name, or gives one that is there another password. */
export const owner = (name: string, password: string): Promise<Read<string>> =>
  onDatabase(async (context): Promise<Read<string>> => {
    const made = await makeOwner(context, name, password);
    return made.ok
      ? {
          ok: true,
          value: `${made.value} may sign in as an owner. Whoever was signed in by that name is not any more.\n`,
        }
      : made;
  });

interface ExportOptions {
  archive?: boolean | undefined;
  csv?: string | undefined;
  commas?: boolean | undefined;
}

/** The yard file, the archive, or one of the tables of the database. */
export const exportFrom = async ({ archive, csv, commas }: ExportOptions): Promise<Read<string>> => {
  const kind = TABLE_KINDS.find((one) => one === csv);
  if (csv !== undefined && !kind) return wrong('command', `no table "${csv}"; there are ${TABLE_KINDS.join(', ')}`);
  if (kind && archive) return wrong('command', 'export takes --archive or --csv, not both');
  return onDatabase(async (context) => {
    if (await context.database.read(isEmpty)) return wrong('DATABASE_URL', 'the database holds no yard');
    const file: KeptFile = kind
      ? await exportTable(context, kind, commas ? 'commas' : 'points')
      : await (archive ? exportArchive : exportYard)(context);
    return { ok: true, value: file.text };
  });
};

/** A yard of the database, and what is planned behind its orders. */
export interface OwnYard {
  yard: YardFile;
  ready: OrderLine[];
  /** What went wrong so far, where pieces to spare go by it. */
  sparesBy?: YardRecord;
  english: English;
}

/** The yard of the database as a plan is made from it, what is to stand ready in it, and the English it is written in. */
export const ownYard = (): Promise<Read<OwnYard>> =>
  onDatabase(async ({ database, now: at }): Promise<Read<OwnYard>> => {
    if (await database.read(isEmpty)) return wrong('DATABASE_URL', 'the database holds no yard');
    return database.read(async (tx) => {
      const ready = (await keptLines(tx)).map(({ count, ...what }) => ({ ...what, quantity: count }));
      const yard = asOf(await loadYardFile(tx, at), at);
      const sparesBy = await sparesByOf(tx, yard);
      return { ok: true, value: { yard, ready, english: await englishOfYard(tx), ...(sparesBy ? { sparesBy } : {}) } };
    });
  });

/** Names of things are the file's or the yard's own, and stay as they are. */
const differenceLines = (say: Say, { what, added, gone, changed }: Difference): string[] => [
  ...added.map((name) => `${say(what)}: new: ${name}`),
  ...gone.map((name) => `${say(what)}: gone: ${name}`),
  ...changed.map(
    ({ name, figures }) =>
      `${say(what)}: ${name}: ${figures.map(({ figure, from, to }) => `${say(figure)} ${from} -> ${to}`).join('; ')}`,
  ),
];

const moveLine = ({ order, customer, from, to }: PromiseMove): string =>
  `Days: ${[order, customer].filter(Boolean).join(' ')}: ${from ?? 'no date'} -> ${to ?? 'no date'}`;

const unkeptLine = ({ order, customer, promisedOn, readyOn }: UnkeptDate): string =>
  `Not kept: ${[order, customer].filter(Boolean).join(' ')}: promised ${promisedOn}, by plan ${readyOn ?? 'no date'}`;

const bytesOf = (name: string): Read<Uint8Array> => {
  try {
    return { ok: true, value: readFileSync(name) };
  } catch (error) {
    const missing = (error as NodeJS.ErrnoException).code === 'ENOENT';
    return wrong('file', missing ? `there is no file "${name}"` : `"${name}" cannot be read`);
  }
};

/** A file that says nothing new is no fault on the command line. */
const nothingNew = (outcome: Outcome<unknown>): string | null =>
  !outcome.ok && outcome.faults[0]?.path === 'same' ? `${outcome.faults[0].message}\n` : null;

/** What somebody should look at before the file is loaded. */
const checkLines = ({ guessed, steps }: FileEffect['checks']): string[] => [
  ...(guessed.length > 0 ? [`Not in UTF-8, read as Windows-1252: ${guessed.join('; ')}`] : []),
  ...steps.map(
    ({ name, figure, from, to }) => `Ten times or a tenth of what it was: ${name}, ${figure} ${from} -> ${to}`,
  ),
];

/** Reads a file into the database, or says what that would change. */
export const importInto = async (name: string, onlyTry: boolean): Promise<Read<string>> => {
  const bytes = bytesOf(name);
  if (!bytes.ok) return bytes;
  return onDatabase(async (context): Promise<Read<string>> => {
    const file = readUpload(bytes.value, context.now);
    if (!file.ok) return file;
    const isWhole = file.value.kind === 'yard' || file.value.kind === 'archive';
    if (!isWhole && (await context.database.read(isEmpty))) return wrong('DATABASE_URL', 'the database holds no yard');
    const outcome = onlyTry ? await tryFile(context, file.value) : await loadFile(context, file.value);
    const nothing = nothingNew(outcome);
    if (nothing !== null) return { ok: true, value: nothing };
    if (!outcome.ok) return outcome;
    const { moved } = outcome.value;
    const differences = 'value' in outcome.value ? outcome.value.value.differences : outcome.value.differences;
    const unkept = 'unkept' in outcome.value ? outcome.value.unkept : [];
    const say = sayIn({ english: await context.database.read(englishOfYard), own: [] });
    const checks = 'checks' in outcome.value ? checkLines(outcome.value.checks) : [];
    const lines = [
      ...checks,
      ...differences.flatMap((one) => differenceLines(say, one)),
      ...moved.map(moveLine),
      ...unkept.map(unkeptLine),
    ];
    const end = onlyTry ? 'Nothing was loaded.' : 'All of it is loaded.';
    return { ok: true, value: `${[...lines, end].join('\n')}\n` };
  });
};
