import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serve } from '@hono/node-server';
import { seedDemo } from '../../db/demo/larch-row.ts';
import { openDatabase } from '../../db/open.ts';
import { createApp } from '../../src/http/app.ts';
import { DEMO_NOW } from '../support/screens.ts';

/**
 * What comes of looking at Larch Row Yard, served in this process on a free port and gone afterwards: as it stands at an instant, by a clock
 * that may go on from there.
 */
export const lookingAtDemo = async <T>(
  look: (url: string) => Promise<T>,
  { from = DEMO_NOW, now = () => from }: { from?: string; now?: () => string } = {},
): Promise<T> => {
  const folder = mkdtempSync(join(tmpdir(), 'yard-'));
  const database = await openDatabase({ url: `file:${join(folder, 'yard.db')}` });
  try {
    await database.write((tx) => seedDemo(tx, from.slice(0, 10), from));
    const { fetch } = createApp({ database, now });
    return await new Promise((resolve, reject) => {
      const server = serve({ fetch, hostname: '127.0.0.1', port: 0 }, ({ port }) =>
        look(`http://127.0.0.1:${port}`)
          .then(resolve, reject)
          .finally(() => server.close()),
      );
    });
  } finally {
    await database.close();
    rmSync(folder, { recursive: true, force: true });
  }
};
