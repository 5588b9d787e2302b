import { type ServerType, serve } from '@hono/node-server';
import type { Hono } from 'hono';
import { onTestFinished } from 'vitest';

export interface RestartedServer {
  url: string;
  /** Nobody answers from now on, and who was being answered is cut off. */
  stop(): Promise<void>;
  /** Answers again, at the same address. */
  start(): Promise<void>;
}

/** Serves an app at an address that stays the same while the server is stopped and started; over with the test. */
export const restartedServer = async (app: Pick<Hono, 'fetch'>): Promise<RestartedServer> => {
  let server: ServerType | null = null;
  const listening = (port: number): Promise<number> =>
    new Promise((resolve) => {
      server = serve({ fetch: app.fetch, hostname: '127.0.0.1', port }, (address) => resolve(address.port));
    });
  const stop = (): Promise<void> =>
    new Promise((resolve) => {
      if (!server) return resolve();
      server.close(() => resolve());
      if ('closeAllConnections' in server) server.closeAllConnections();
      server = null;
    });
  const port = await listening(0);
  onTestFinished(stop);
  return {
    url: `http://127.0.0.1:${port}`,
    stop,
    start: async () => {
      await listening(port);
    },
  };
};
