import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { emptyYard } from '../../src/engine/begin/empty-yard.ts';
import { plannedYard, saturday } from '../support/planned-yard.ts';
import { yardSeeds } from '../support/property-seed.ts';
import { randomYard } from '../support/random-yard.ts';
import { screensOver } from '../support/screens.ts';

describe('any yard that can be planned', () => {
  test.each(yardSeeds(8, 1))('has its pages, yard %i', async (seed) => {
    const { get } = await screensOver(randomYard(seed, 'small'));
    for (const path of [
      '/buying',
      '/today',
      '/today/sheet',
      '/today/evening',
      '/turns',
      '/turns?from=3',
      '/begin/session?made=7',
    ])
      expect([path, (await get(path)).status]).toEqual([path, 200]);
  });
});

/** Every page of a yard. `ways` are where its emptiness may lead. */
const PAGES = [
  ...['/', '/orders', '/orders/past', '/orders/new', '/moulds', '/moulds?next=yes', '/today', '/today/sheet', '/turns'],
  '/today/evening',
  ...[
    '/buying',
    '/changes',
    '/kits/by-size',
    '/prices',
    '/prices/sessions',
    '/begin',
    '/begin/four',
    '/begin/session',
    '/who',
    '/phone',
  ],
  ...['/yard', '/yard/guesses'],
];
const WAYS = /href="\/(begin|yard|orders)?(\/[a-z]+)?"/;

describe('an empty yard', () => {
  test.each(PAGES)('%s says what to do next', async (path) => {
    const now = '2027-04-08T09:00:00Z';
    const { get } = await screensOver(emptyYard({ name: 'Our yard', timeZone: 'Europe/Dublin', now }));
    const answer = await get(path);
    expect(answer.status).toBe(200);
    const main = /<main[^>]*>([\s\S]*)<\/main>/.exec(await answer.text())?.[1] ?? '';
    expect(main).toMatch(WAYS);
  });
});

const FORMS = [
  ...['/buying/bought', '/buying/arrived', '/buying/not-coming', '/buying/counted'],
  ...['/today/coated', '/today/prepared', '/today/poured', '/today/stripped', '/today/packed', '/today/unpacked'],
  ...['/today/mixing', '/today/thrown-away', '/today/not-done'],
  ...['/today/no-work', '/today/stop-at', '/today/one-fewer'],
];
const NAMES = [
  ...[
    'material',
    'line',
    'quantity',
    'on',
    'price',
    'goods',
    'came',
    'counted',
    'mould',
    'casting',
    'sealed',
    'good',
    'order',
  ],
  ...[
    'mould0',
    'casting0',
    'filled0',
    'bags',
    'filledAt',
    'other',
    'date',
    'session',
    'at',
    'window',
    'evenShort',
    'step',
  ],
];
const value = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 20 }),
  fc.constantFrom(
    '',
    '0',
    '-1',
    '1e9',
    '9999999',
    'NaN',
    '<script>',
    "'; drop table orders",
    '2027-04-10',
    '9999-12-31',
    '10:00',
    'yes',
  ),
  fc.constantFrom(
    'mortar',
    'rod',
    'mesh',
    '900 no. 1',
    '900 no. 2',
    'panel-900',
    '27-001',
    saturday('08:00'),
    '2027-13-01T99:99:00Z',
  ),
);

test('no form, whatever is in it, is a fault of the program', async () => {
  const yard = plannedYard({ yard: { ...plannedYard().yard, now: saturday('09:00') } });
  const { post } = await screensOver(yard);
  await fc.assert(
    fc.asyncProperty(fc.constantFrom(...FORMS), fc.dictionary(fc.constantFrom(...NAMES), value), async (path, form) => {
      const { status } = await post(path, form);
      expect([303, 422]).toContain(status);
    }),
    { numRuns: 150 },
  );
}, 60_000);
