import { describe, expect, test } from 'vitest';
import { stockLinesOf } from '../../db/stores/stock-lines.ts';
import { moveInStock } from '../../db/stores/stock-store.ts';
import { screensOver, textOf } from '../support/screens.ts';

const at = '2027-04-08T08:00:00+01:00';

describe('the stock book of a material', () => {
  test('says what came and went, for what and by whom, and what each line left', async () => {
    const { database, post, get } = await screensOver();
    const slip = await post('/buying/counted', { material: 'mortar', counted: '18', line: '0' });
    const [, change = ''] = /done=(\d+)/.exec(slip.headers.get('Location') ?? '') ?? [];
    await post('/undo', { change, back: '/buying' });
    await post('/buying/counted', { material: 'mortar', counted: '18.5', line: '0' });
    await post('/orders/27-001/hand-over', { evenShort: 'yes' });
    await database.write((tx) =>
      moveInStock(tx, { material: 'mortar', kind: 'received', at, quantity: 3, useBy: '2027-05-02' }),
    );
    const mortar = await textOf(await get('/buying/book?of=mortar'));
    expect(mortar).toMatch(/^21\.5 bags of Fast-setting mortar in the yard\./);
    expect(mortar).toContain('8:00 Came, bag date Sun 2 May +3 bags 21.5 bags left');
    expect(mortar).toContain('9:00 Counted −1.5 bags 18.5 bags left');
    // What was undone stays to be read, and so does the undoing.
    expect(mortar).toContain('9:00 Undone: Counted +2 bags 20 bags left');
    expect(mortar).toContain('9:00 Counted Undone. −2 bags 18 bags left');
    expect(mortar).toContain('9:00 There when the book began +20 bags 20 bags left');
    const rod = await textOf(await get('/buying/book?of=rod'));
    expect(rod).toContain('9:00 Left over from a cut, 2394 mm for order 27-001 +1 1 of 2394 mm left');
    expect(rod).toContain('9:00 Opened to cut from for order 27-001 −1 stick 2 sticks left');
    expect((await get('/buying/book?of=sand')).status).toBe(404);
  });

  test('is a hundred lines a page, and a table of all of them', async () => {
    const { database, get } = await screensOver();
    await database.write(async (tx) => {
      for (let line = 0; line < 120; line++)
        await moveInStock(tx, { material: 'mortar', kind: 'used', at, quantity: -0.1, work: { order: '27-001' } });
    });
    const first = await textOf(await get('/buying/book?of=mortar'));
    expect(first.match(/Used/g)).toHaveLength(100);
    const [, ...rest] = await database.read((tx) => stockLinesOf(tx, 'mortar', 100, undefined));
    const last = rest.at(-1)!;
    expect(last.left).toBeCloseTo(20 - 2.1, 9);
    const second = await textOf(await get(`/buying/book?of=mortar&before=${last.id}`));
    expect(second.match(/Used/g)).toHaveLength(20);
    expect(second).toContain('There when the book began +20 bags 20 bags left');
    const table = await get('/buying/book.csv?of=mortar');
    expect(table.headers.get('Content-Disposition')).toContain('stock-book.csv');
    const rows = (await table.text()).trimEnd().split('\r\n');
    expect(rows).toHaveLength(122);
    expect(rows[1]).toBe('2027-04-08 08:00,used,-0.1,bag,,8,,,,,27-001,,,122,,');
  });
});
