// Where the program is: at the root of its address or, behind a proxy, under a path. Scripts go by where they were loaded from.

/** "/", or "/rota/". */
export const ROOT = new URL('..', import.meta.url).pathname;

/** The path of an address, as if the program stood at the root. */
export const ownPath = (address) => new URL(address, location.href).pathname.slice(ROOT.length - 1);
