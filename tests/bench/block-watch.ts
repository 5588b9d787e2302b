import { closeSync, openSync, readSync } from 'node:fs';

/** The longest time for which the thread did nothing but one thing. */
export interface Block {
  ms: number;
  /** For how much of it the thread ran; the rest it waited for a processor or a disk. Null where the system does not say. */
  ranMs: number | null;
}

export interface BlockWatch {
  /** The longest block since this was asked last. */
  longest(): Block;
  stop(): void;
}

const EVERY_MS = 1;

/** How long this thread has been running, in milliseconds, as Linux counts it. */
const runningTime = () => {
  const text = Buffer.alloc(64);
  let file: number | null = null;
  try {
    file = openSync('/proc/thread-self/schedstat', 'r');
  } catch {
    // Another system: what ran cannot be told from what waited.
  }
  return {
    ms: () =>
      file === null ? null : Number(text.toString('latin1', 0, readSync(file, text, 0, 64, 0)).split(' ')[0]) / 1e6,
    close: () => file !== null && closeSync(file),
  };
};

/** Looks in every millisecond: where it is kept from that, the thread was blocked. */
export const watchBlocks = (): BlockWatch => {
  const running = runningTime();
  let worst: Block = { ms: 0, ranMs: null };
  let [lookedAt, ranThen] = [performance.now(), running.ms()];
  const look = () => {
    const [now, ran] = [performance.now(), running.ms()];
    const ranMs = ran === null || ranThen === null ? null : ran - ranThen;
    // What waited for a processor is no work of ours: the longest stretch is the one that ran longest.
    worst = {
      ms: Math.max(worst.ms, now - lookedAt - EVERY_MS),
      ranMs: ranMs === null ? null : Math.max(worst.ranMs ?? 0, ranMs),
    };
    [lookedAt, ranThen] = [now, ran];
  };
  const timer = setInterval(look, EVERY_MS);
  return {
    longest: () => {
      look();
      const longest = worst;
      worst = { ms: 0, ranMs: null };
      return longest;
    },
    stop: () => {
      clearInterval(timer);
      running.close();
    },
  };
};
