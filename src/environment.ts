/** What the environment may say, all of it optional. */
export interface Environment {
  host: string;
  port: number;
  databaseUrl: string;
  databaseToken?: string;
}

const DEFAULT_HOST = '127.0.0.1';
const DEFAULT_PORT = '3000';
const DEFAULT_DATABASE_URL = 'file:data/mould-rota.db';
const DATABASE_URL = /^(file:.+|(libsql|https?):\/\/.+)/;
const HIGHEST_PORT = 65_535;

const portFault = (port: string): string[] =>
  /^\d{1,5}$/.test(port) && Number(port) <= HIGHEST_PORT
    ? []
    : [`PORT has to be a whole number from 0 to ${HIGHEST_PORT} (0 takes any free one), but is "${port}".`];

const databaseFaults = (url: string, token: string | undefined): string[] => {
  if (!DATABASE_URL.test(url))
    return [`DATABASE_URL has to be a file: path or a libsql:, http: or https: address, but is "${url}".`];
  if (token && url.startsWith('file:'))
    return ['DATABASE_TOKEN is given, but DATABASE_URL is a file, which takes none.'];
  return [];
};

/**
 * Reads HOST, PORT, DATABASE_URL and DATABASE_TOKEN; one that is empty counts as not given. Everything that is wrong is
 * said at once.
 */
export const readEnvironment = (
  values: Readonly<Record<string, string | undefined>>,
): { ok: true; environment: Environment } | { ok: false; faults: string[] } => {
  const host = values.HOST || DEFAULT_HOST;
  const port = values.PORT || DEFAULT_PORT;
  const databaseUrl = values.DATABASE_URL || DEFAULT_DATABASE_URL;
  const databaseToken = values.DATABASE_TOKEN || undefined;
  const faults = [
    ...(/\s/.test(host) ? [`HOST has to be a name or an address without spaces, but is "${host}".`] : []),
    ...portFault(port),
    ...databaseFaults(databaseUrl, databaseToken),
  ];
  if (faults.length > 0) return { ok: false, faults };
  return {
    ok: true,
    environment: { host, port: Number(port), databaseUrl, ...(databaseToken ? { databaseToken } : {}) },
  };
};
