import { isOwnMachine } from '../shared/own-machine.ts';

/** What the environment may say, all of it optional. */
export interface Environment {
  host: string;
  port: number;
  databaseUrl: string;
  /** The server whose database the file is a copy of. */
  databaseSyncUrl?: string;
  databaseToken?: string;
  /** Names it answers to beside the machine's own, in small letters. */
  hosts: string[];
  /** Nobody but this machine gets here: neither is it listened for others, nor was it said how they come. */
  isOneDesk: boolean;
  /** Where a backup goes every night, and how many are kept; null where none is made. */
  backups: { folder: string; kept: number } | null;
  /** The origin by which others get to it through a proxy. */
  publicAddress: string | null;
  /** Under which path of it, such as `/rota`; '' at its root. */
  publicPath: string;
  /** Every request is told of, a line of JSON each. */
  isLogged: boolean;
}

const DEFAULT_HOST = '127.0.0.1';
const DEFAULT_PORT = '3000';
const DEFAULT_DATABASE_URL = 'file:data/mould-rota.db';
const SERVER_URL = /^(libsql|https?):\/\/.+/;
const DATABASE_URL = /^(file:.+|(libsql|https?):\/\/.+)/;
const HIGHEST_PORT = 65_535;

const portFault = (port: string): string[] =>
  /^\d{1,5}$/.test(port) && Number(port) <= HIGHEST_PORT
    ? []
    : [`PORT has to be a whole number from 0 to ${HIGHEST_PORT} (0 takes any free one), but is "${port}".`];

const databaseFaults = (url: string, syncUrl: string | undefined, token: string | undefined): string[] => {
  const isFile = url.startsWith('file:');
  if (!DATABASE_URL.test(url))
    return [`DATABASE_URL has to be a file: path or a libsql:, http: or https: address, but is "${url}".`];
  if (syncUrl !== undefined && !SERVER_URL.test(syncUrl))
    return [`DATABASE_SYNC_URL has to be a libsql:, http: or https: address, but is "${syncUrl}".`];
  if (syncUrl !== undefined && !isFile)
    return [
      'DATABASE_SYNC_URL is given, but DATABASE_URL is no file of this machine, in which the copy could be kept.',
    ];
  if (token && isFile && syncUrl === undefined)
    return ['DATABASE_TOKEN is given, but DATABASE_URL is a file, which takes none.'];
  return [];
};

/** A name or an address as a Host header has it, without a port; null where it is none. */
const asHostname = (text: string): string | null =>
  /^([\w.-]+|\[[\da-f:.]+\])$/i.test(text) && URL.canParse(`http://${text}`)
    ? new URL(`http://${text}`).hostname
    : null;

const hostsFaults = (names: readonly string[]): string[] =>
  names
    .filter((name) => asHostname(name) === null)
    .map((name) => `MOULD_ROTA_HOSTS has to be names without a port, with commas between them, but has "${name}".`);

/** The path of an address, without a stroke at its end. */
const pathIn = (address: string): string => new URL(address).pathname.replace(/\/$/, '');

/** Nothing but where a server is, and perhaps a plain path there: no name of a user, no query. */
const isPlace = (text: string): boolean => {
  if (!/^https?:/i.test(text) || !URL.canParse(text)) return false;
  const [{ origin }, path] = [new URL(text), pathIn(text)];
  return /^(\/[\w-]+)*$/.test(path) && `${origin}${path}`.toLowerCase() === text.toLowerCase().replace(/\/$/, '');
};

const publicFaults = (text: string | undefined): string[] =>
  text === undefined || isPlace(text)
    ? []
    : [`PUBLIC_ADDRESS has to be like https://rota.example or https://yard.example/rota, but is "${text}".`];

/** What a Host header says of a server that listens at one name or address; nothing where it listens at all of them. */
const nameListenedAt = (host: string): string[] => {
  const name = asHostname(host.includes(':') ? `[${host}]` : host);
  return name === null || isOwnMachine(name) || ['0.0.0.0', '[::]'].includes(name) ? [] : [name];
};

const listensToItself = (host: string): boolean =>
  isOwnMachine(asHostname(host.includes(':') ? `[${host}]` : host) ?? '');

const MOST_BACKUPS = 1000;
const DEFAULT_KEPT = '14';

const backupFaults = (folder: string | undefined, kept: string, databaseUrl: string): string[] => [
  ...(/^[1-9]\d{0,3}$/.test(kept) && Number(kept) <= MOST_BACKUPS
    ? []
    : [`BACKUPS_KEPT has to be a whole number from 1 to ${MOST_BACKUPS}, but is "${kept}".`]),
  ...(folder !== undefined && !databaseUrl.startsWith('file:')
    ? ['BACKUP_FOLDER is given, but DATABASE_URL is no file of this machine.']
    : []),
];

const namesIn = (text: string | undefined): string[] => (text ?? '').split(/[\s,]+/).filter((name) => name !== '');

/** Where the database is, as it is opened. */
export const databaseAddress = ({ databaseUrl: url, databaseSyncUrl: syncUrl, databaseToken: token }: Environment) => ({
  url,
  ...(syncUrl === undefined ? {} : { syncUrl }),
  ...(token === undefined ? {} : { token }),
});

/**
 * Reads HOST, PORT, DATABASE_URL, DATABASE_SYNC_URL, DATABASE_TOKEN, BACKUP_FOLDER, BACKUPS_KEPT, MOULD_ROTA_HOSTS, PUBLIC_ADDRESS
 * and LOG; one that is empty counts as not given. Everything that is wrong is said at once.
 */
export const readEnvironment = (
  values: Readonly<Record<string, string | undefined>>,
): { ok: true; environment: Environment } | { ok: false; faults: string[] } => {
  const host = values.HOST || DEFAULT_HOST;
  const port = values.PORT || DEFAULT_PORT;
  const databaseUrl = values.DATABASE_URL || DEFAULT_DATABASE_URL;
  const databaseSyncUrl = values.DATABASE_SYNC_URL || undefined;
  const databaseToken = values.DATABASE_TOKEN || undefined;
  const names = namesIn(values.MOULD_ROTA_HOSTS);
  const publicAddress = values.PUBLIC_ADDRESS || undefined;
  const [folder, kept] = [values.BACKUP_FOLDER || undefined, values.BACKUPS_KEPT || DEFAULT_KEPT];
  const faults = [
    ...(/\s/.test(host) ? [`HOST has to be a name or an address without spaces, but is "${host}".`] : []),
    ...portFault(port),
    ...databaseFaults(databaseUrl, databaseSyncUrl, databaseToken),
    ...backupFaults(folder, kept, databaseUrl),
    ...hostsFaults(names),
    ...publicFaults(publicAddress),
    ...(['', 'json'].includes(values.LOG ?? '') ? [] : [`LOG has to be "json" or nothing, but is "${values.LOG}".`]),
  ];
  if (faults.length > 0) return { ok: false, faults };
  return {
    ok: true,
    environment: {
      ...{ host, port: Number(port), databaseUrl },
      ...(databaseSyncUrl ? { databaseSyncUrl } : {}),
      ...(databaseToken ? { databaseToken } : {}),
      hosts: [...nameListenedAt(host), ...names.flatMap((name) => asHostname(name) ?? [])],
      isOneDesk: listensToItself(host) && names.length === 0 && publicAddress === undefined,
      backups: folder === undefined ? null : { folder, kept: Number(kept) },
      publicAddress: publicAddress === undefined ? null : new URL(publicAddress).origin,
      publicPath: publicAddress === undefined ? '' : pathIn(publicAddress),
      isLogged: values.LOG === 'json',
    },
  };
};
