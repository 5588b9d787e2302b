import { parentPort } from 'node:worker_threads';
import { type LongThoughts, type ThoughtKind, thinkThrough } from './usecases/long-thought.ts';

/** What a thread is asked; it answers each question with one message. */
interface Asked<K extends ThoughtKind> {
  kind: K;
  question: LongThoughts[K]['question'];
}

parentPort?.on('message', ({ kind, question }: Asked<ThoughtKind>) => {
  parentPort?.postMessage(thinkThrough(kind, question));
});
