/** What a typed text comes to, or in plain words why it can't be read. */
export type Reading<T> = { ok: true; value: T } | { ok: false; reason: string };

/** A text was read and comes to a value. */
export const read = <T>(value: T): Reading<T> => ({ ok: true, value });

/** A text was not read. The reason is a sentence of its own, and says how to write it. */
export const unread = (reason: string): Reading<never> => ({ ok: false, reason });
