import { buildWhenOld } from './built.mjs';

const LOOK_MS = 300;

/** npm passes a signal on to the shell between the two, which ends and leaves the server behind: whoever ended npm meant it. */
const endWithShell = () => {
  const shell = process.ppid;
  const looking = setInterval(() => process.ppid !== shell && process.kill(process.pid, 'SIGTERM'), LOOK_MS);
  process.once('SIGTERM', () => clearInterval(looking));
  looking.unref();
};

if (process.env.npm_lifecycle_event === 'start') endWithShell();
// A server that is away is said in our own words, not in those of the driver's log.
process.env.RUST_LOG ??= 'off';
// In this very process, so that a signal to it is one to the server.
await buildWhenOld();
await import('../dist/main.js');
