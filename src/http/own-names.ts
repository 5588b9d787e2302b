import type { Context, MiddlewareHandler } from 'hono';
import { isOwnMachine } from '../../shared/own-machine.ts';

/** How the program is reached. */
export interface Door {
  /** Nobody but this machine gets here: whoever sits at it has not to sign in. */
  isOneDesk: boolean;
  /** Names it answers to beside those of the machine itself, in small letters and without a port. */
  hosts: readonly string[];
  /** Addresses of this machine in its networks, as they are just now. */
  addresses: () => readonly string[];
  /** The origin by which others get to it through a proxy, such as `https://rota.example`; null where none stands in front. */
  publicAddress: string | null;
  /** Under which path of it, such as `/rota`; '' at its root. */
  path: string;
}

/** One desk: nobody but the machine itself gets here. */
export const ONE_DESK: Door = { isOneDesk: true, hosts: [], addresses: () => [], publicAddress: null, path: '' };

const NOT_OURS =
  'Mould Rota does not go by that name, so it did not answer, and nothing was changed. If the name is yours, whoever set ' +
  'this up can add it to MOULD_ROTA_HOSTS.\n';

const NO_PROXY =
  'This came by way of a proxy, which Mould Rota knows nothing of, so it did not answer, and nothing was changed. Whoever ' +
  'set this up can say in PUBLIC_ADDRESS where it is reached.\n';

/** What proxies add (RFC 7239, and what came before it). */
const PROXY_HEADERS = ['Forwarded', 'X-Forwarded-For', 'X-Forwarded-Host', 'X-Forwarded-Proto'];

/** The name in a Host header or an origin, as browsers compare it; null where it is none. */
const nameIn = (address: string): string | null => {
  const url = URL.canParse(address) ? new URL(address) : null;
  return url && url.username === '' && url.pathname === '/' && url.search === ''
    ? url.hostname.replace(/\.$/, '')
    : null;
};

const isOwn = (name: string, { hosts, addresses, publicAddress }: Door): boolean =>
  isOwnMachine(name) ||
  hosts.includes(name) ||
  (publicAddress !== null && nameIn(publicAddress) === name) ||
  addresses().includes(name.replace(/^\[(.*)\]$/, '$1'));

/** True for a Host header that names this program: a page elsewhere can have any name lead here (DNS rebinding). */
const isOwnHost = (host: string, door: Door): boolean => {
  const name = nameIn(`http://${host}`);
  return name !== null && isOwn(name, door);
};

/** Answers to its own names only, whatever is asked; and through no proxy that nobody told it of. */
export const ownNamesOnly =
  (door: Door): MiddlewareHandler =>
  async (c, next) => {
    const named = [c.req.header('Host'), new URL(c.req.url).host];
    if (!named.every((host) => host === undefined || isOwnHost(host, door))) return c.text(NOT_OURS, 421);
    const isForwarded = PROXY_HEADERS.some((name) => c.req.header(name) !== undefined);
    if (isForwarded && door.isOneDesk) return c.text(NO_PROXY, 421);
    return next();
  };

/** A path as others get to it. */
export const addressAt = (c: Context, path: string, { publicAddress, path: under }: Door): string =>
  new URL(under + path, publicAddress ?? c.req.url).href;
