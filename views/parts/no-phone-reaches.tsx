import type { FC } from 'hono/jsx';
import { isOwnMachine } from '../../shared/own-machine.ts';

/** An address that nobody else gets to. */
export const isOfThisMachine = (address: string): boolean => isOwnMachine(new URL(address).hostname);

/** Said where an address is shown that was made from the one in the browser, and leads a phone nowhere. */
export const NoPhoneReaches: FC<{ address: string; what: string }> = ({ address, what }) =>
  isOfThisMachine(address) ? (
    <p class="warning">
      You opened this page by an address of this machine itself, so no phone can follow {what}. Open the page by the
      machine's name or number in your network first, where it is served there.
    </p>
  ) : null;
