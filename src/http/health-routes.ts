import { Hono } from 'hono';
import { revisionNow } from '../usecases/changes/revision-now.ts';
import type { Screens } from './screens.ts';

/** For whatever watches the program: `/healthz` says that it runs, `/readyz` that its data can be read. Neither says more. */
export const healthRoutes = ({ context }: Screens): Hono => {
  const isReady = (): Promise<boolean> =>
    revisionNow(context()).then(
      () => true,
      () => false,
    );
  return new Hono()
    .get('/healthz', (c) => c.text('ok\n'))
    .get('/readyz', async (c) => ((await isReady()) ? c.text('ok\n') : c.text('The database cannot be read.\n', 503)));
};
