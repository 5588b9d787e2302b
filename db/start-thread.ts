import { Worker } from 'node:worker_threads';

let tsx: string | undefined;

/** From the sources the thread has to learn to read TypeScript before it can load its entry. */
const sourceLoader = (entry: URL): string => {
  tsx ??= import.meta.resolve('tsx/esm/api');
  return `import(${JSON.stringify(tsx)}).then(({ register }) => (register(), import(${JSON.stringify(entry.href)})))`;
};

/**
 * Starts an entry in a thread of its own. It lies beside whoever starts it, `from`: in the folder of its source, and with all
 * other bundles in one folder.
 */
export const startThread = (
  name: 'plan-worker' | 'backup-worker' | 'replica-worker',
  from: string,
  workerData: unknown,
): Worker => {
  const bundled = from.endsWith('.js');
  const entry = new URL(bundled ? `./${name}.js` : `./${name}.ts`, from);
  return bundled ? new Worker(entry, { workerData }) : new Worker(sourceLoader(entry), { eval: true, workerData });
};
