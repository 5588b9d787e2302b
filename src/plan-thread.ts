import type { Worker } from 'node:worker_threads';
import { startThread } from '../db/start-thread.ts';
import { asMessage, fromMessage } from './plan-messages.ts';
import type { Compute } from './usecases/core/computations.ts';
import { logLines } from './usecases/core/log-lines.ts';

export interface PlanThread {
  /** One question after another; null when it was given up, or took too long, or failed. */
  compute: Compute;
  /** Gives up the question under way, if there is one. */
  giveUp(): void;
  /** Ends the thread; every question that waits is given up. */
  close(): Promise<void>;
}

/** What a thread is told as it starts. */
export interface ThreadData {
  /** It leaves the processor to whoever wants it. */
  standsBack: boolean;
}

interface ThreadParts extends Partial<ThreadData> {
  /** How long an answer may take. */
  limitMs: number;
  /** A thread that was asked nothing for so long gives its memory back. */
  idleMs?: number;
  /** Starts the thread; the one that plans, where nothing else is said. */
  start?: (workerData: ThreadData) => Worker;
  tell: (words: string) => void;
}

const IDLE_MS = 30_000;

const startWorker = (workerData: ThreadData): Worker => startThread('plan-worker', import.meta.url, workerData);

/**
 * A thread that works out what would hold up the requests. It is started with its first question and ended when a
 * question is given up, since nothing else stops a calculation; the next question starts it again.
 */
export const planThread = (parts: ThreadParts): PlanThread => {
  const { limitMs, idleMs = IDLE_MS, tell, standsBack = false, start = startWorker } = parts;
  let worker: Worker | null = null;
  let answer: ((answer: unknown) => void) | null = null;
  let ending: Promise<unknown> = Promise.resolve();
  let last: Promise<unknown> = Promise.resolve();
  let idle: NodeJS.Timeout | undefined;
  let closed = false;

  const end = () => {
    clearTimeout(idle);
    if (worker) ending = Promise.all([ending, worker.terminate()]);
    worker = null;
    answer?.(null);
  };
  const started = (): Worker => {
    const fresh = start({ standsBack });
    // One that was given up may have sent its answer already: it answers nothing any more.
    fresh.on('message', (message) => worker === fresh && answer?.(message));
    fresh.on('error', (error) => {
      tell(`A calculation failed: ${logLines(error)}`);
      if (worker === fresh) end();
    });
    // One that ends by itself, whatever made it, answers nothing; the next question starts another.
    fresh.on('exit', () => {
      if (worker !== fresh) return;
      tell('A calculation ended without an answer. Nothing was changed by it.');
      end();
    });
    return fresh;
  };
  const answered = async (kind: string): Promise<unknown> => {
    const tooLong = setTimeout(() => {
      tell(`Working out "${kind}" was given up after ${limitMs / 1000} seconds. Nothing was changed by it.`);
      end();
    }, limitMs);
    try {
      return await new Promise((resolve) => {
        answer = resolve;
      });
    } finally {
      clearTimeout(tooLong);
      answer = null;
      idle = setTimeout(end, idleMs).unref();
    }
  };
  const ask = async (kind: string, question: unknown): Promise<unknown> => {
    if (closed) return null;
    clearTimeout(idle);
    worker ??= started();
    worker.postMessage({ kind, question: asMessage(question) });
    return fromMessage(await answered(kind));
  };
  const compute = (kind: string, question: unknown): Promise<unknown> => {
    const next = last.then(() => ask(kind, question));
    last = next;
    return next;
  };
  return {
    compute: compute as Compute,
    giveUp: () => {
      if (answer) end();
    },
    close: async () => {
      closed = true;
      end();
      await ending;
    },
  };
};
