import { describe, expect, test } from 'vitest';
import { importCircles } from './support/import-circles.ts';
import { importFaults, purityFaults, ROOMS, ZONES } from './support/import-rules.ts';
import { filesUnder } from './support/source-files.ts';

const files = ['shared', 'src', 'db', 'views'].flatMap(filesUnder);
const inFolder = (folder: string) => files.filter(({ path }) => path.startsWith(`${folder}/`));

describe('the sources', () => {
  test.each(ZONES)('$folder was read: a check that sees no file passes everything', ({ folder }) => {
    expect(inFolder(folder).length).toBeGreaterThan(0);
  });

  test('import only what the table allows', () => {
    expect(files.flatMap(importFaults)).toEqual([]);
  });

  test.each(Object.keys(ROOMS))('room %s was read', (room) => {
    expect(inFolder(`src/usecases/${room}`).length).toBeGreaterThan(0);
  });

  test('import nothing in a circle, types no more than what runs', () => {
    expect(importCircles(files)).toEqual([]);
  });

  test('of the engine reach no clock, no chance, no log, and wait for nothing', () => {
    expect(inFolder('src/engine').flatMap(purityFaults)).toEqual([]);
  });
});

describe('a planted import is found', () => {
  test.each([
    ['shared/planted.ts', `import { Temporal } from 'temporal-polyfill';`],
    ['shared/planted.ts', `import { planYard } from '../src/engine/plan.ts';`],
    ['src/engine/planted.ts', `import { readFileSync } from 'node:fs';`],
    ['src/engine/planted.ts', `import { readFileSync } from 'fs';`],
    ['src/engine/planted.ts', `import { eq } from 'drizzle-orm';`],
    ['src/engine/decoder/planted.ts', `import { open } from '../../../db/open.ts';`],
    ['src/engine/planted.ts', `export * from '../usecases/make-plan.ts';`],
    ['src/engine/planted.ts', `const fs = import('node:fs');`],
    ['src/engine/planted.ts', `const name = 'fs'; const fs = import(name);`],
    ['src/engine/planted.ts', `const fs = require('node:fs');`],
    ['db/planted.ts', `import { planYard } from '../src/engine/plan.ts';`],
    ['db/planted.ts', `import { defineConfig } from 'drizzle-kit';`],
    ['views/planted.tsx', `import { showOrder } from '../src/usecases/orders/show-order.ts';`],
    ['views/planted.tsx', `import { type Page, showOrder } from '../src/usecases/orders/show-order.ts';`],
    ['views/planted.tsx', `import type { Order } from '../db/stores/order-store.ts';`],
    ['views/planted.tsx', `import { Hono } from 'hono';`],
    ['src/usecases/plan/planted.ts', `import { Hono } from 'hono';`],
    ['src/usecases/plan/planted.ts', `import { Layout } from '../../../views/layout.tsx';`],
    ['src/usecases/planted.ts', `export const roomless = 0;`],
    ['src/usecases/nowhere/planted.ts', `export const roomless = 0;`],
    ['src/usecases/core/planted.ts', `import { readDate } from '../typed/date-typed.ts';`],
    ['src/usecases/typed/planted.ts', `import { currentPlan } from '../plan/make-plan.ts';`],
    ['src/usecases/typed/planted.ts', `import type { CurrentPlan } from '../plan/make-plan.ts';`],
    ['src/usecases/plan/planted.ts', `import { showToday } from '../today/show-today.ts';`],
    ['src/usecases/orders/planted.ts', `import { showToday } from '../today/show-today.ts';`],
    ['src/usecases/kits/planted.ts', `import { nowhere } from '../nowhere/planted.ts';`],
    ['src/http/planted.ts', `import { open } from '../../db/open.ts';`],
    ['src/http/planted.ts', `import type { Plan } from '../engine/plan.ts';`],
    ['src/http/planted.ts', `let open: import('../../db/open.ts').Database;`],
    ['src/http/planted.ts', `import { readFileSync } from 'node:fs';`],
    ['src/http/planted.ts', `import '../main.ts';`],
    ['src/cli.ts', `import './main.ts';`],
    ['src/elsewhere/planted.ts', `export const nothing = 0;`],
  ])('%s: %s', (path, text) => {
    expect(importFaults({ path, text })).toHaveLength(1);
  });
});

describe('an allowed import passes', () => {
  test.each([
    ['src/engine/planted.ts', `import pkg from 'rrule'; import { Temporal } from 'temporal-polyfill';`],
    [
      'src/engine/decoder/planted.ts',
      `import { day } from '../../../shared/time.ts'; import { plan } from '../plan.ts';`,
    ],
    ['db/stores/planted.ts', `import { text } from 'drizzle-orm/sqlite-core'; import { existsSync } from 'node:fs';`],
    ['views/planted.tsx', `import type { Page } from '../src/usecases/orders/show-order.ts';`],
    ['views/planted.tsx', `import { type Page } from '../src/usecases/orders/show-order.ts';`],
    [
      'src/usecases/today/planted.ts',
      `import { packOrder } from '../orders/pack-order.ts'; import '../core/context.ts';`,
    ],
    ['src/usecases/orders/planted.ts', `import type { Tx } from '../../../db/open.ts'; import './order-draft.ts';`],
    ['src/http/planted.ts', `import { Hono } from 'hono'; import { bodyLimit } from 'hono/body-limit';`],
    ['src/main.ts', `import { serve } from '@hono/node-server'; import { readEnvironment } from './environment.ts';`],
  ])('%s: %s', (path, text) => {
    expect(importFaults({ path, text })).toEqual([]);
  });
});

describe('a circle of imports', () => {
  const file = (path: string, ...from: string[]) => ({
    path: `src/engine/${path}.ts`,
    text: from.map((other) => `import { x } from '${other}.ts';`).join('\n'),
  });
  const [a, b, c] = ['src/engine/a.ts', 'src/engine/b.ts', 'src/engine/in/c.ts'];

  test('is found as the way round', () => {
    const files = [file('start', './a'), file('a', './b'), file('b', './in/c'), file('in/c', '../a')];
    expect(importCircles(files)).toEqual([`${a} > ${b} > ${c} > ${a}`]);
  });

  test('is found where only types come back, and where a file imports itself', () => {
    const types = { path: b, text: `import type { X } from './a.ts';` };
    expect(importCircles([file('a', './b'), types])).toEqual([`${a} > ${b} > ${a}`]);
    expect(importCircles([file('a', './a')])).toEqual([`${a} > ${a}`]);
  });

  test('is found behind another one, each of them once', () => {
    const files = [file('a', './b', './d'), file('b', './a'), file('d', './e'), file('e', './d')];
    expect(importCircles(files)).toHaveLength(2);
  });

  test('is none where two ways lead to one file, or to a file that is not looked at', () => {
    const files = [file('a', './b', './in/c'), file('b', './in/c'), file('in/c', '../elsewhere')];
    expect(importCircles(files)).toEqual([]);
  });
});

describe('what the engine may not use is found', () => {
  test.each([
    'const now = Date.now();',
    `const now = Date['now']();`,
    'const now = new Date();',
    'const now = new Date;',
    'const now = Date();',
    'const now = Temporal.Now.instant();',
    'const chance = Math.random();',
    'const plan = async () => 1;',
    'async function plan() {}',
    `console.log('planned');`,
    'const port = process.env.PORT;',
    'setTimeout(() => 1, 5);',
  ])('%s', (text) => {
    expect(purityFaults({ path: 'src/engine/planted.ts', text })).toHaveLength(1);
  });

  test('and a date that is given, or a field that shares a name, is not', () => {
    const text = `const day = new Date(0); const mould = { process: 1 }; const one = mould.process; // Date.now() async`;
    expect(purityFaults({ path: 'src/engine/planted.ts', text })).toEqual([]);
  });
});
