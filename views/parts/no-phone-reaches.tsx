import type { FC } from 'hono/jsx';

/** Loopback (RFC 6761, 6.3; RFC 1122, 3.2.1.3; RFC 4291, 2.5.3): nobody else gets there. */
export const isOfThisMachine = (address: string): boolean => {
  const { hostname } = new URL(address);
  return hostname === 'localhost' || hostname.startsWith('127.') || hostname === '[::1]';
};

/** Said where an address is shown that was made from the one in the browser, and leads a phone nowhere. */
export const NoPhoneReaches: FC<{ address: string; what: string }> = ({ address, what }) =>
  isOfThisMachine(address) ? (
    <p class="warning">
      You opened this page by an address of this machine itself, so no phone can follow {what}. Open the page by the
      machine's name or number in your network first, where it is served there.
    </p>
  ) : null;
