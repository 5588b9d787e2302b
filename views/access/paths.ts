/** Where it is decided who may come in. */
export const PEOPLE = '/people';

/** Where somebody chooses another password for themselves, and has passkeys. */
export const OWN_PASSWORD = '/password';

/** Where a passkey of one's own is asked for, made and taken off. */
export const OWN_PASSKEYS = '/password/passkeys';
