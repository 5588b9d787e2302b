import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** A yard that another process serves: where, and of what there are pages. */
export interface Served {
  port: number;
  barePort: number;
  order: string;
  mould: string;
}

/** A yard of so many orders and moulds served by a process of its own, with its threads but for the search; none is the demo. The caller ends it. */
export const servedBeside = async (orders: number, moulds: number): Promise<Served & { child: ChildProcess }> => {
  const child = fork(fileURLToPath(new URL('served-yard.ts', import.meta.url)), [String(orders), String(moulds)]);
  return new Promise((resolve, reject) => {
    child.once('message', (told) => resolve({ ...(told as Served), child }));
    child.once('exit', (code) => reject(new Error(`the server of the pages ended with ${code}`)));
  });
};
