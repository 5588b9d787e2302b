import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serve } from '@hono/node-server';
import { openDatabase } from '../../db/open.ts';
import { DEMO_NOW, screensOn, withDemo } from '../support/screens.ts';

/** What comes of looking at Larch Row Yard, served in this process on a free port as it stands at `DEMO_NOW`, and gone afterwards. */
export const lookingAtDemo = async <T>(look: (url: string) => Promise<T>): Promise<T> => {
  const folder = mkdtempSync(join(tmpdir(), 'yard-'));
  const database = await openDatabase({ url: `file:${join(folder, 'yard.db')}` });
  try {
    await database.write(withDemo);
    const { app } = screensOn(database, DEMO_NOW);
    return await new Promise((resolve, reject) => {
      const server = serve({ fetch: app.fetch, hostname: '127.0.0.1', port: 0 }, ({ port }) =>
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
