import { describe, expect, test } from 'vitest';
import { seedDemo } from '../../../db/demo/larch-row.ts';
import type { Database } from '../../../db/open.ts';
import { applyYardFile } from '../../../db/stores/apply-yard-file.ts';
import { customers } from '../../../db/stores/customer-store.ts';
import { addGuesses, guessesOfYard, setTyped, typedOf } from '../../../db/stores/figure-store.ts';
import { arrivalsOf, onTheirWay } from '../../../db/stores/material-store.ts';
import { mouldById, updateMould } from '../../../db/stores/mould-store.ts';
import { openOrders, orderById, pastOrders, updateOrder } from '../../../db/stores/order-store.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { storeRows } from '../../../db/stores/store-rows.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard, type YardKind } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';

const DEMO_NOW = '2027-04-05T07:30:00Z';

const demo = async (): Promise<Database> => {
  const database = await temporaryDatabase();
  await database.write((tx) => seedDemo(tx, DEMO_NOW.slice(0, 10), DEMO_NOW));
  return database;
};

const apply = (database: Database, file: YardFile) => database.write((tx) => applyYardFile(tx, file));
const load = (database: Database, now = DEMO_NOW) => database.read((tx) => loadYardFile(tx, now));

describe('a yard file put over a yard', () => {
  test('says when suppliers are there, and leaves all else that is known of them', async () => {
    const database = await demo();
    const before = await load(database);
    expect(before.suppliers!.map(({ name }) => name)).toEqual(["Builders' merchant", 'Mail order']);
    const rows = () => database.read(async (tx) => (await storeRows(tx)).suppliers);
    const held = await rows();
    await apply(database, before);
    expect(await rows()).toEqual(held);
    const opens = { rule: 'FREQ=WEEKLY;BYDAY=TU', from: '2027-01-05' };
    const [merchant, post] = before.suppliers!;
    await apply(database, { ...before, suppliers: [{ name: merchant!.name, opens, closed: ['2027-04-13'] }, post!] });
    const { delivers: _delivers, ...facts } = held[0]!.facts;
    expect((await rows())[0]!.facts).toEqual({ ...facts, opens, closed: ['2027-04-13'] });
    expect((await rows())[1]).toEqual(held[1]);
  });

  test.each<YardKind>(['small', 'tight-rack', 'cold-spring', 'typical', 'odd'])(
    'leaves the yard as the file has it, whatever was there (%s)',
    async (kind) => {
      const database = await demo();
      for (const seed of yardSeeds(12, 1)) {
        const yard = randomYard(seed, kind);
        await apply(database, yard);
        expect(await load(database, yard.yard.now)).toEqual(yard);
        const shuffled = {
          ...yard,
          ...{ moulds: yard.moulds.toReversed(), castings: yard.castings.toReversed(), work: yard.work.toReversed() },
          ...{
            orders: yard.orders.toReversed(),
            finished: yard.finished.toReversed(),
            inMould: yard.inMould.toReversed(),
          },
        };
        await apply(database, shuffled);
        expect(await load(database, yard.yard.now)).toEqual(shuffled);
      }
    },
  );

  test('writes nothing where it says what is there', async () => {
    const database = await demo();
    await database.write((tx) => updateOrder(tx, '27-010', { packedAt: DEMO_NOW }));
    const before = await database.read(storeRows);
    await apply(database, await load(database));
    expect(await database.read(storeRows)).toEqual({
      ...before,
      yardHabits: before.yardHabits.map((row) => ({ ...row, demo: false })),
    });
  });

  test('keeps phones, notes, sizes, habits, past orders, prices paid and what was typed', async () => {
    const database = await demo();
    await database.write(async (tx) => {
      await addGuesses(tx, [
        { kind: 'casting', id: 'panel-900', figure: 'kg' },
        { kind: 'casting', id: 'panel-900', figure: 'fillMinutes' },
        { kind: 'mould', id: 'no such mould', figure: 'oilMinutes' },
      ]);
      await setTyped(tx, { kind: 'casting', id: 'panel-900', figure: 'kg' }, '29 lb 12 oz');
    });
    const file = await load(database);
    const [past, goods] = await database.read(async (tx) => [await pastOrders(tx, 9), await onTheirWay(tx)] as const);
    const changed = {
      ...file,
      castings: file.castings.map((one) => (one.id === 'panel-900' ? { ...one, kg: one.kg + 1 } : one)),
      moulds: file.moulds.filter(({ id }) => id !== '600 no. 1'),
      orders: file.orders.map((order, index) => (index === 0 ? { ...order, due: '2027-06-05' } : order)),
    };
    const first = file.orders[0]?.id ?? '';
    const was = await database.read((tx) => orderById(tx, first));
    await apply(database, changed);
    await database.read(async (tx) => {
      expect(await pastOrders(tx, 9)).toEqual(past);
      expect(await onTheirWay(tx)).toEqual(goods);
      expect(await arrivalsOf(tx, 'mesh')).toHaveLength(1);
      expect(await orderById(tx, first)).toEqual({ ...was, promisedOn: '2027-06-05' });
      expect((await customers(tx)).filter(({ phone }) => phone).length).toBeGreaterThan(2);
      expect((await mouldById(tx, '1200 no. 3'))?.note).toBe('Stop board for 900 hangs behind it.');
      expect((await mouldById(tx, '900 no. 2'))?.damageNote).toContain('End board split');
      // The mass is another one now, and no guess any more; the minutes are what they were.
      expect(await guessesOfYard(tx)).toEqual([{ kind: 'casting', id: 'panel-900', figure: 'fillMinutes' }]);
      expect(await typedOf(tx, { kind: 'casting', id: 'panel-900' })).toEqual({ kg: '29 lb 12 oz' });
    });
  });

  test('a date only wanted stays wanted, and a mended mould loses the note on its damage', async () => {
    const database = await demo();
    const file = await load(database);
    const wanted = (await database.read(openOrders)).find(({ wantedOn, promisedOn }) => wantedOn && !promisedOn);
    await database.write((tx) => updateMould(tx, '900 no. 1', { note: 'Left rail is new.' }));
    await apply(database, {
      ...file,
      moulds: file.moulds.map((one) =>
        one.id === '900 no. 2' ? { ...one, condition: 'ready', repairedOn: undefined } : one,
      ),
    });
    await database.read(async (tx) => {
      expect(await orderById(tx, wanted?.id ?? '')).toEqual(wanted);
      expect(await mouldById(tx, '900 no. 2')).toMatchObject({ condition: 'ready', damageNote: null });
      expect((await mouldById(tx, '900 no. 1'))?.note).toBe('Left rail is new.');
    });
  });

  test('a past order goes when what it asked for does, and comes back open when the file has it so', async () => {
    const database = await temporaryDatabase();
    const yard = smallYard();
    await database.write(async (tx) => {
      await replaceYard(tx, yard);
      await updateOrder(tx, '27-001', { status: 'handed over', handedOverOn: '2027-04-03', note: 'Gate is narrow.' });
    });
    await apply(database, { ...yard, orders: [] });
    expect(await database.read((tx) => pastOrders(tx, 9))).toHaveLength(1);
    await apply(database, yard);
    const order = await database.read((tx) => orderById(tx, '27-001'));
    expect(order).toMatchObject({ status: 'open', handedOverOn: null, note: 'Gate is narrow.' });
    await database.write((tx) => updateOrder(tx, '27-001', { status: 'cancelled' }));
    await apply(database, { ...yard, orders: [], kits: [] });
    expect(await database.read((tx) => pastOrders(tx, 9))).toEqual([]);
  });
});
