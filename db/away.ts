/** The server of the database does not answer, so nothing can be written. */
export class PrimaryAway extends Error {
  /** It was gone while it was told: it may have what it was told or not, and whoever asks it later sees which. */
  readonly isUnknown: boolean;
  constructor(isUnknown: boolean, cause?: unknown) {
    super('the database server does not answer', cause === undefined ? {} : { cause });
    this.isUnknown = isUnknown;
  }
}

/** The error of a server that is away behind whatever was thrown; null where it is another fault. */
export const primaryAway = (error: unknown): PrimaryAway | null => {
  for (let at = error; at instanceof Error; at = at.cause) if (at instanceof PrimaryAway) return at;
  return null;
};

/** Nothing was sent where no connection came about (errno; Node's own fetch). */
const NOT_SENT = /^(ECONNREFUSED|ENOTFOUND|EAI_AGAIN|EHOSTUNREACH|ENETUNREACH|UND_ERR_CONNECT_TIMEOUT)$/;

/** What a server, or a proxy in front of it, answers that is not working just now. */
const NOT_NOW = /\bstatus (502|503|504)\b/;

/** Whether a server was not reached, and whether it may have got what was sent; null where it answered. */
export const unreached = (error: unknown): { isUnknown: boolean } | null => {
  let failed = false;
  for (let at = error; at instanceof Error; at = at.cause) {
    const code = 'code' in at ? String(at.code) : '';
    if (NOT_SENT.test(code)) return { isUnknown: false };
    if (at.message === 'fetch failed' || NOT_NOW.test(at.message)) failed = true;
    if (/^(ECONNRESET|EPIPE|ETIMEDOUT|UND_ERR_\w+)$/.test(code) || at.name === 'TimeoutError') failed = true;
    if (at instanceof AggregateError && at.errors.every((one) => unreached(one)?.isUnknown === false))
      return { isUnknown: false };
  }
  return failed ? { isUnknown: true } : null;
};
