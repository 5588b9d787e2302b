import { buildWhenOld } from './built.mjs';

await buildWhenOld();
await import('../dist/cli.js');
