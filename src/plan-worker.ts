import { constants, setPriority } from 'node:os';
import { parentPort, workerData } from 'node:worker_threads';
import { asMessage, fromMessage } from './plan-messages.ts';
import type { ThreadData } from './plan-thread.ts';
import { type ComputationKind, type Computations, computeHere } from './usecases/core/computations.ts';

/** What a thread is asked; it answers each question with one message. */
interface Asked<K extends ComputationKind> {
  kind: K;
  question: Computations[K]['question'];
}

/** Threads share few processors: one that nobody waits for stands back. Elsewhere than here a thread has no say of its own. */
if ((workerData as ThreadData | null)?.standsBack && process.platform === 'linux')
  setPriority(constants.priority.PRIORITY_BELOW_NORMAL);

parentPort?.on('message', async ({ kind, question }: Asked<ComputationKind>) => {
  const asked = (await fromMessage(question)) as typeof question;
  parentPort?.postMessage(asMessage(computeHere(kind, asked)));
});
