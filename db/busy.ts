import { setTimeout as pause } from 'node:timers/promises';

/** How long to go on trying while another process holds the file. */
const PATIENCE_MS = 20_000;
const FIRST_PAUSE_MS = 5;
const LONGEST_PAUSE_MS = 150;

/**
 * True when another process held the database, or a server took too long over a transaction and rolled it back, however
 * deep the driver has wrapped that.
 */
export const isBusy = (error: unknown): boolean => {
  for (let at = error; at instanceof Error; at = at.cause) {
    const code = 'code' in at ? String(at.code) : '';
    if (/^(SQLITE_(BUSY|LOCKED)|TRANSACTION_TIMEOUT)/.test(code)) return true;
  }
  return false;
};

/**
 * Tries the work again while the database is busy, waiting longer each time. `reconnect` runs before every new try: after
 * a busy error a connection may report success and never commit.
 */
export const whileBusy = async <T>(work: () => Promise<T>, reconnect: () => Promise<void>): Promise<T> => {
  const until = Date.now() + PATIENCE_MS;
  for (let longest = FIRST_PAUSE_MS; ; longest = Math.min(longest * 2, LONGEST_PAUSE_MS)) {
    try {
      return await work();
    } catch (error) {
      if (!isBusy(error) || Date.now() > until) throw error;
      await reconnect();
      await pause(longest * (0.5 + Math.random() / 2));
    }
  }
};
