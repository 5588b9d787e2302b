import { describe, expect, test } from 'vitest';
import { addIncoming } from '../../db/stores/material-store.ts';
import { bumpRevision } from '../../db/stores/yard-store.ts';
import { screensOver, textOf } from '../support/screens.ts';
import { smallYard } from '../support/small-yard.ts';

/** A bag fills two panels, so a pair takes one. Two orders of two pairs each: four bags, of two that are there. */
const yard = () => {
  const order = (id: string, customer: string, due: string) => ({
    ...{ id, customer, due, lines: [{ kit: 'pair', quantity: 2 }] },
  });
  const [mortar, rod] = smallYard().materials;
  return smallYard({
    materials: [{ ...mortar!, onHand: 2, leadDays: 1 }, rod!],
    orders: [order('27-001', 'School garden', '2027-04-17'), order('27-002', 'Ann Moran', '2027-05-08')],
  });
};

/** "27-001 Sat 10 Apr −1 bag": the rows of the table. */
const rowsOf = (html: string): string[] =>
  [...html.matchAll(/<tr>(.*?)<\/tr>/gs)].slice(1).map(([, row = '']) =>
    row
      .replace(/<[^>]*>/g, ' ')
      .replace(/\s+/g, ' ')
      .trim(),
  );

describe('what a material is spoken for', () => {
  test('stands by day and order, with the day it runs short and the numbers of Buying', async () => {
    const { get, database } = await screensOver(yard());
    const html = await (await get('/buying/spoken-for?of=mortar')).text();
    expect(html).toMatch(/Fast-setting mortar runs short (on \w+|on \w+ \d+ \w+), unless more is bought\./);
    const rows = rowsOf(html);
    expect(rows).toHaveLength(4);
    expect(rows.map((row) => /School garden|Ann Moran/.exec(row)?.[0])).toEqual([
      ...['School garden', 'School garden', 'Ann Moran', 'Ann Moran'],
    ]);
    expect(rows[1]).toMatch(/−1 bag 0$/);
    expect(rows[2]).toContain('1 bag short');
    expect(html).toContain('2 bags in the yard, 2 spoken for, 0 spare.');
    expect(await textOf(await get('/buying'))).toContain('2 bags in the yard, all spoken for.');
    // The same in words, for who does not see the line.
    expect(html).toMatch(
      /<title id="chart-title-desk">How much there is of Fast-setting mortar, by today&#39;s plan: 2 bags now, and it runs short/,
    );
    await database.write(async (tx) => {
      await addIncoming(tx, { material: 'mortar', quantity: 2, on: '2027-04-09', boughtOn: null, price: null });
      await bumpRevision(tx);
    });
    const more = await textOf(await get('/buying/spoken-for?of=mortar'));
    expect(more).toContain('What there is of Fast-setting mortar and what is on its way will do.');
    expect(more).toContain('Fri 9 Apr Comes +2 bags 4');
    expect((await get('/buying/spoken-for?of=sand')).status).toBe(404);
  });

  test('is free at once when an order is cancelled, and the buying list shrinks', async () => {
    const { get, post } = await screensOver(yard());
    expect(await textOf(await get('/buying'))).toMatch(/2 bags of Fast-setting mortar/);
    await post('/orders/27-001/cancel', {});
    const html = await (await get('/buying/spoken-for?of=mortar')).text();
    expect(html).toContain('What there is of Fast-setting mortar and what is on its way will do.');
    expect(rowsOf(html).every((row) => row.includes('Ann Moran'))).toBe(true);
    expect(await textOf(await get('/buying'))).toContain('Nothing has to be bought for what is planned.');
  });
});
