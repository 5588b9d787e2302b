import { describe, expect, test } from 'vitest';
import { createApp } from '../../src/http/app.ts';
import { scaledYard } from '../support/scaled-yard.ts';
import { yardContext } from '../support/yard-context.ts';
import { yieldsDuring } from '../support/yields-during.ts';

const yard = scaledYard(80, 40);

const pages = async (): Promise<(path: string) => Promise<string>> => {
  const { database, now } = await yardContext(yard);
  const app = createApp({ database, now: () => now });
  return async (path) => (await app.request(path)).text();
};

describe('a page with a long list', () => {
  test('of orders has each order once, in the order of their days', async () => {
    const page = await (await pages())('/orders');
    const links = [...page.matchAll(/<a href="\/orders\/(27-\d+)"/g)].map(([, id]) => id);
    expect([...links].sort()).toEqual(yard.orders.map(({ id }) => id).sort());
    expect(page.trimEnd().endsWith('</html>')).toBe(true);
  });

  test('of orders begins with the day it is asked from, and leads back to the first', async () => {
    const ask = await pages();
    const rest = await ask('/orders?from=2027-03-20');
    const idsOf = (html: string) => [...html.matchAll(/<a href="\/orders\/(27-\d+)"/g)].map(([, id]) => id);
    expect(idsOf(rest).length).toBeLessThan(idsOf(await ask('/orders')).length);
    expect(rest).toContain('<a href="/orders">From the first day on</a>');
    expect(idsOf(await ask('/orders?from=never'))).toEqual(idsOf(await ask('/orders')));
  });

  test('of moulds has each mould once, by its kind and in its place, and a label of each on one of its pages', async () => {
    const ask = await pages();
    const page = await ask('/moulds');
    const others = [...page.matchAll(/href="(\/moulds\?from=\d+)"/g)].map(([, path]) => path!);
    const all = (await Promise.all(others.map(ask))).join('') + page;
    const marks = [...all.matchAll(/action="\/moulds\/([^/"]+)\/damaged/g)].map(([, id]) => decodeURIComponent(id!));
    expect([...new Set(marks)].sort()).toEqual(yard.moulds.map(({ id }) => id).sort());
    const labels = [await ask('/moulds/labels'), await ask('/moulds/labels?from=24')];
    for (const html of labels) expect(html.length).toBeLessThan(100_000);
    const ids = labels.flatMap((html) => [...html.matchAll(/<strong>([^<]+)<\/strong>/g)].map(([, id]) => id!));
    expect(ids.sort()).toEqual(yard.moulds.map(({ id }) => id).sort());
    expect(labels[0]).toContain('Labels 1 to 24 of 40.');
    expect(labels[0]).toContain('href="/moulds/labels?from=24"');
    expect(labels[1]).toContain('<a href="/moulds/labels" class="button plain">Labels before</a>');
    expect(await ask('/moulds/labels?from=400')).toContain('Labels 1 to 24');
  });

  test('of turns draws each turn of its table once, and its chart leads to it', async () => {
    const page = await (await pages())('/turns');
    const rows = [...page.matchAll(/<tr id="(turn-[^"]+)"/g)].map(([, id]) => id);
    const boxes = [...page.matchAll(/<a href="#(turn-[^"]+)"/g)].map(([, id]) => id);
    expect(rows.length).toBeGreaterThan(60);
    expect(new Set(rows).size).toBe(rows.length);
    expect([...boxes].sort()).toEqual([...rows].sort());
  });

  test('lets others are let in', async () => {
    const page = await pages();
    await page('/orders');
    for (const path of ['/', '/orders', '/moulds', '/turns', '/buying', '/today'])
      expect([path, (await yieldsDuring(() => page(path))) > 5]).toEqual([path, true]);
  });
});
