import { describe, expect, test } from 'vitest';
import { seedDemo } from '../../../db/demo/larch-row.ts';
import { arrivalsOf, onTheirWay } from '../../../db/stores/material-store.ts';
import { mouldsInOrder } from '../../../db/stores/mould-store.ts';
import { openOrders, pastOrders } from '../../../db/stores/order-store.ts';
import { suppliersByName } from '../../../db/stores/supplier-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import { readYardFile, type YardFile } from '../../../shared/yard-file.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { temporaryDatabase } from '../../support/temporary-database.ts';

const demoOn = async (today: string) => {
  const database = await temporaryDatabase();
  const now = `${today}T10:00:00Z`;
  await database.write((tx) => seedDemo(tx, today, now));
  return { database, now };
};

const yardOn = async (today: string): Promise<YardFile> => {
  const { database, now } = await demoOn(today);
  const read = readYardFile(await database.read((tx) => loadYardFile(tx, now)));
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.yard;
};

/** Every day of a week, the turn of a year, a leap day, and the nights on which the clocks change. */
const WEEK = Array.from({ length: 7 }, (_, index) => dateOfDay(dayNumber('2027-04-05') + index));
const AWKWARD = ['2027-01-01', '2027-12-31', '2028-02-29', '2027-03-28', '2027-10-31'];

describe('Larch Row Yard', () => {
  test.each([...WEEK, ...AWKWARD])('first opened on %s is a yard in the middle of its work', async (today) => {
    const yard = await yardOn(today);
    const plan = planYard(yard, { effort: 'quick' });
    expect(audit(yard, plan).faults).toEqual([]);
    expect(plan.unplanned).toEqual([]);
    expect(plan.orders.filter(({ daysLate }) => daysLate > 0)).toHaveLength(1);
    const due = new Map(yard.orders.map((order) => [order.id, order.due]));
    const spare = plan.orders.map(({ id, completesOn }) => dayNumber(due.get(id) ?? 'none') - dayNumber(completesOn));
    expect(spare.some((days) => days >= 0 && days <= 3)).toBe(true);
    expect(spare.filter((days) => days >= 7).length).toBeGreaterThan(2);
    expect(plan.buys.length).toBeGreaterThan(0);
  });

  test('has moulds of four lengths in every condition, and orders at every stage', async () => {
    const { database } = await demoOn('2027-04-08');
    await database.read(async (tx) => {
      const moulds = await mouldsInOrder(tx);
      expect(moulds).toHaveLength(12);
      expect(new Set(moulds.map(({ setFor }) => /\d+/.exec(setFor)?.[0])).size).toBe(4);
      expect(new Set(moulds.map(({ condition }) => condition))).toEqual(new Set(['ready', 'dirty', 'damaged']));
      expect(moulds.filter(({ prepped }) => prepped)).toHaveLength(1);
      expect(moulds.filter(({ damageNote }) => damageNote !== null)).toHaveLength(1);
      expect(moulds.filter(({ piece }) => piece?.order)).toHaveLength(2);
      const open = await openOrders(tx);
      expect(open.filter(({ heldUntil }) => heldUntil !== null)).toHaveLength(1);
      expect(open.filter(({ lines }) => lines.every(({ material }) => material !== undefined))).toHaveLength(1);
      expect((await pastOrders(tx, 9)).map(({ status }) => status)).toEqual(['cancelled', 'handed over']);
      expect(await onTheirWay(tx)).toHaveLength(2);
      expect(await arrivalsOf(tx, 'mesh')).toHaveLength(1);
    });
  });

  test('numbers its orders by year, also over the turn of one', async () => {
    const { database } = await demoOn('2027-01-04');
    const ids = (await database.read(openOrders)).map(({ id }) => id);
    expect(ids).toEqual(['26-056', '26-057', '26-059', '26-060', '26-061', '26-062', '27-001', '27-002']);
  });

  test('has no customer with the name of a supplier', async () => {
    const { database } = await demoOn('2027-04-09');
    const { customers, suppliers } = await database.read(async (tx) => ({
      customers: [...(await openOrders(tx)), ...(await pastOrders(tx, 9))].flatMap(
        ({ customer }) => customer?.name ?? [],
      ),
      suppliers: (await suppliersByName(tx)).map(({ name }) => name),
    }));
    expect(suppliers).not.toEqual([]);
    expect(customers.filter((name) => suppliers.includes(name))).toEqual([]);
  });
});
