import { describe, expect, test } from 'vitest';
import { freeSetAside, updateOrder } from '../../../db/stores/order-store.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { bumpRevision, isEmpty, loadYardFile, revision } from '../../../db/stores/yard-store.ts';
import { dateIn, minuteOf } from '../../../shared/time.ts';
import type { YardFile, YardFileInput } from '../../../shared/yard-file.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { datedYard } from '../../support/random-yard/dated-stock.ts';
import { suppliedYard } from '../../support/random-yard/suppliers.ts';
import { randomYard, type YardKind } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';

const throughTheStore = async (yard: YardFile): Promise<YardFile> => {
  const database = await temporaryDatabase();
  await database.write((tx) => replaceYard(tx, yard));
  return database.read((tx) => loadYardFile(tx, yard.yard.now));
};

test('the days of suppliers go in and come out, of those that sell something', async () => {
  const yard = suppliedYard(randomYard(5), 5);
  const sold = new Set(yard.materials.map(({ supplier }) => supplier));
  const wanted = yard.suppliers!.filter(({ name }) => sold.has(name)).sort((a, b) => (a.name < b.name ? -1 : 1));
  expect(wanted.length).toBeGreaterThan(0);
  const { suppliers } = await throughTheStore(yard);
  expect(suppliers).toEqual(wanted.map((one) => ({ ...one, fetched: one.fetched ?? false })));
});

/** What lots say, in whatever order and however many there are of one date; those that say nothing are left out. */
const withLotsAdded = (yard: YardFile) => ({
  ...yard,
  materials: yard.materials.map(({ lots = [], ...material }) => {
    const sums = new Map<string, number>();
    for (const { quantity, useBy, openedAt } of lots) {
      const key = JSON.stringify([useBy, openedAt && minuteOf(openedAt)]);
      sums.set(key, (sums.get(key) ?? 0) + quantity);
    }
    sums.delete('[null,null]');
    return { ...material, lots: [...sums].sort(([a], [b]) => (a < b ? -1 : 1)) };
  }),
});

const mould = (id: string) => ({
  id,
  makes: [{ casting: 'panel-900', changeMinutes: 7 }],
  setFor: 'panel-900',
  condition: 'damaged' as const,
  repairedOn: '2027-05-01',
  oilEveryTurns: 8,
  oilMinutes: 10,
  oilDryMinutes: 60,
});

/** Entries out of alphabetical order, the same entry twice, fractions that binary cannot hold, empty lists and names. */
const awkward: Partial<YardFileInput> = {
  closed: ['2027-05-01', '2027-04-17', '2027-05-01'],
  extra: [
    { date: '2027-04-16', start: '20:00', end: '24:00', crew: 3, allows: ['strip'] },
    { date: '2027-04-16', start: '09:00', end: '12:00', allows: [] },
  ],
  temperatures: [
    { from: '2027-05-01', celsius: 13.3 },
    { from: '2027-04-01', celsius: -2.25 },
  ],
  incoming: [{ material: 'mortar', quantity: 0.1 + 0.2, on: '2027-04-09' }],
  moulds: [mould('zinc no. 1'), mould('900 no. 9'), { ...mould('a "quoted" one'), condition: 'retired' }],
  finished: [
    { casting: 'panel-900', count: 0 },
    { casting: 'panel-900', count: 3, readyAt: '2027-04-08T12:00:00Z', order: 'b' },
  ],
  inMould: [{ mould: '900 no. 9', casting: 'panel-900', filledAt: '2027-04-08T06:00:00-02:00', order: 'a' }],
  orders: [
    { id: 'b', customer: '', due: '2027-04-24', lines: [{ casting: 'panel-900', quantity: 2 }] },
    {
      id: 'a',
      weight: 0,
      lines: [
        { material: 'mortar', quantity: 1.5 },
        { kit: 'pair', quantity: 0 },
      ],
    },
    { id: 'c', customer: '', weight: 2.5, lines: [] },
  ],
};

describe('a yard file through the store', () => {
  test('comes out as it went in', async () => {
    expect(await throughTheStore(smallYard())).toEqual(smallYard());
    expect(await throughTheStore(smallYard(awkward))).toEqual(smallYard(awkward));
  });

  test('keeps what is fixed, but for an order that is no longer open', async () => {
    const { batches, pours } = planYard(smallYard(), { effort: 'quick' });
    const yard = smallYard({ keep: { batches, pours } });
    expect(pours.map(({ order }) => order)).toEqual(['27-001', '27-001']);
    const database = await temporaryDatabase();
    await database.write((tx) => replaceYard(tx, yard));
    expect(await database.read((tx) => loadYardFile(tx, yard.yard.now))).toEqual(yard);
    await database.write((tx) => updateOrder(tx, '27-001', { status: 'lapsed' }));
    const { keep } = await database.read((tx) => loadYardFile(tx, yard.yard.now));
    expect(keep?.pours).toEqual(pours.map(({ order: _order, ...pour }) => pour));
  });

  test.each<YardKind>(['small', 'tight-rack', 'cold-spring', 'typical', 'busy'])(
    'whatever it is (%s)',
    async (kind) => {
      const database = await temporaryDatabase();
      for (const seed of yardSeeds(12, 1)) {
        const yard = datedYard(randomYard(seed, kind), seed);
        await database.write((tx) => replaceYard(tx, yard));
        const today = dateIn(yard.yard.timeZone, yard.yard.now);
        const loaded = await database.read((tx) => loadYardFile(tx, yard.yard.now));
        const { incoming } = loaded;
        expect(incoming.map(({ on }, i) => on === yard.incoming[i]!.on || yard.incoming[i]!.on < today)).not.toContain(
          false,
        );
        expect(withLotsAdded(loaded)).toEqual(withLotsAdded({ ...yard, incoming }));
      }
    },
  );

  test('takes the place of the one before', async () => {
    const database = await temporaryDatabase();
    await database.write((tx) => replaceYard(tx, smallYard(awkward)));
    await database.write((tx) => replaceYard(tx, smallYard()));
    expect(await database.read((tx) => loadYardFile(tx, smallYard().yard.now))).toEqual(smallYard());
  });
});

test('pieces set aside for an order that is no longer open are stock', async () => {
  const database = await temporaryDatabase();
  const yard = smallYard({ finished: [{ casting: 'panel-900', count: 1, order: '27-001' }] });
  await database.write(async (tx) => {
    await replaceYard(tx, yard);
    await updateOrder(tx, '27-001', { status: 'cancelled' });
  });
  const loaded = await database.read((tx) => loadYardFile(tx, yard.yard.now));
  expect(loaded.orders).toEqual([]);
  expect(loaded.finished).toEqual([{ casting: 'panel-900', count: 1 }]);
  await database.write((tx) => freeSetAside(tx, '27-001'));
  expect(await database.read((tx) => loadYardFile(tx, yard.yard.now))).toEqual(loaded);
});

test('the revision counts up from nothing', async () => {
  const database = await temporaryDatabase();
  expect(await database.read(isEmpty)).toBe(true);
  expect(await database.read(revision)).toBe(0);
  expect(await database.write(bumpRevision)).toBe(1);
  expect(await database.write(bumpRevision)).toBe(2);
  expect(await database.read(revision)).toBe(2);
});

test.each([
  ['17:00', '2027-04-08', 3],
  ['08:00', '2027-04-09', 3],
  ['00:00', '2027-04-09', 3],
  ['17:00', '2027-04-09', 0],
])('goods that nobody answered for, brought by %s, are expected on %s', async (deliveredBy, on, leadDays) => {
  const incoming = [
    { material: 'mortar', quantity: 6, on: '2027-04-07' },
    { material: 'mortar', quantity: 2, on: '2027-04-09' },
  ];
  const small = smallYard();
  const materials = small.materials.map((one) => ({ ...one, leadDays }));
  const yard = smallYard({ version: 2, yard: { ...small.yard, deliveredBy }, materials, incoming });
  const stored = await throughTheStore(yard);
  expect(stored.incoming.map((goods) => goods.on)).toEqual([on, '2027-04-09']);
});
