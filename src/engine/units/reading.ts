/** What a typed text comes to, or in plain words why it can't be read. */
export type Reading<T> = { ok: true; value: T } | { ok: false; reason: string };

export const read = <T>(value: T): Reading<T> => ({ ok: true, value });

export const unread = (reason: string): Reading<never> => ({ ok: false, reason });
