import { Worker } from 'node:worker_threads';

let tsx: string | undefined;

/** From the sources the thread has to learn to read TypeScript before it can load its entry. */
const sourceLoader = (entry: URL): string => {
  tsx ??= import.meta.resolve('tsx/esm/api');
  return `import(${JSON.stringify(tsx)}).then(({ register }) => (register(), import(${JSON.stringify(entry.href)})))`;
};

/** Starts an entry of this folder in a thread of its own, from its bundle or from the sources, whichever runs. */
export const startThread = (name: 'plan-worker' | 'backup-worker', workerData: unknown): Worker => {
  const bundled = import.meta.url.endsWith('.js');
  const entry = new URL(bundled ? `./${name}.js` : `./${name}.ts`, import.meta.url);
  return bundled ? new Worker(entry, { workerData }) : new Worker(sourceLoader(entry), { eval: true, workerData });
};
