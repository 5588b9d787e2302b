import { buildWhenOld } from './built.mjs';

process.env.RUST_LOG ??= 'off';
await buildWhenOld();
await import('../dist/cli.js');
