import { Hono } from 'hono';
import { type SSEStreamingApi, streamSSE } from 'hono/streaming';
import { revisionNow } from '../usecases/changes/revision-now.ts';
import type { Screens } from './screens.ts';

/** Others' changes are seen within this long; it is looked for, since another process may have made them. */
const LOOK_MS = 1000;
/** After so many looks without a change something is said, so that a line that is dead is noticed. */
const QUIET_LOOKS = 20;

const tellRevisions = async (stream: SSEStreamingApi, { context }: Screens): Promise<void> => {
  let told = -1;
  for (let looks = 0; !stream.aborted && !stream.closed; looks += 1) {
    const now = await revisionNow(context());
    if (now !== told) await stream.writeSSE({ event: 'revision', data: String(now) });
    else if (looks % QUIET_LOOKS === 0) await stream.write(': nothing new\n\n');
    told = now;
    await stream.sleep(LOOK_MS);
  }
};

/** Says which revision the data is at, and again whenever it is another one (server-sent events of the HTML standard). */
export const streamRoute = (screens: Screens): Hono =>
  // Where the store is gone the stream ends, and the browser asks again by itself.
  new Hono().get('/changes/stream', (c) =>
    streamSSE(c, (stream) => tellRevisions(stream, screens).catch(() => undefined)),
  );
