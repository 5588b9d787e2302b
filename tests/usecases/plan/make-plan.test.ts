import { describe, expect, test } from 'vitest';
import { openNotices } from '../../../db/stores/change-store.ts';
import { orderById, updateOrder } from '../../../db/stores/order-store.ts';
import { storedPlan } from '../../../db/stores/plan-store.ts';
import { bumpRevision, loadYardFile } from '../../../db/stores/yard-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/** The small yard works on Saturdays from 08:00 to 12:00 and, here, from 18:00 to 20:00 as well. */
const twoSessions = smallYard({
  extra: [{ date: '2027-04-10', start: '18:00', end: '20:00' }],
});
const saturday = (clock: string) => `2027-04-10T${clock}:00+01:00`;

/** The instant of the plan that is shown at `later` when one was made at `made`. */
const planShown = async (made: string, later: string): Promise<string> => {
  const { database } = await yardContext(twoSessions);
  await currentPlan({ database, now: made });
  return (await currentPlan({ database, now: later })).now;
};

describe('a stored plan', () => {
  test.each(['07:00', '09:00', '13:00'])(
    'made at %s stays to the end of its day, whatever sessions end',
    async (made) => {
      expect(await planShown(saturday(made), saturday('23:59'))).toBe(saturday(made));
      const sunday = '2027-04-11T00:00:00+01:00';
      expect(await planShown(saturday(made), sunday)).toBe(sunday);
    },
  );

  test('ends with its date in the yard, which is not the date in UTC', async () => {
    // 23:30 and 00:30 in Dublin in summer are both on 8 April in UTC.
    const evening = '2027-04-08T22:30:00Z';
    expect(await planShown(evening, '2027-04-08T22:59:00Z')).toBe(evening);
    expect(await planShown(evening, '2027-04-08T23:30:00Z')).toBe('2027-04-08T23:30:00Z');
  });

  test('is made anew when the data has another revision', async () => {
    const { database, now } = await yardContext();
    await currentPlan({ database, now });
    await database.write(bumpRevision);
    const later = '2027-04-08T09:05:00+01:00';
    expect(await currentPlan({ database, now: later })).toMatchObject({ now: later, revision: 1 });
    expect(await database.read(storedPlan)).toMatchObject({ now: later, revision: 1 });
  });
});

describe('a date held for a customer', () => {
  const heldUntil = async (date: string) => {
    const context = await yardContext();
    await context.database.write((tx) => updateOrder(tx, '27-001', { heldUntil: date }));
    return context.database;
  };
  const at = (date: string) => `${date}T09:00:00+01:00`;

  test('holds its place to the end of its day', async () => {
    const database = await heldUntil('2027-04-08');
    const { plan } = await currentPlan({ database, now: '2027-04-08T23:59:00+01:00' });
    expect(plan.orders.map(({ id }) => id)).toEqual(['27-001']);
    expect(await database.read(openNotices)).toEqual([]);
  });

  test('lapses the day after, once, with a notice', async () => {
    const database = await heldUntil('2027-04-08');
    await currentPlan({ database, now: at('2027-04-08') });
    const { plan, yard } = await currentPlan({ database, now: at('2027-04-09') });
    expect([plan.orders, yard.orders]).toEqual([[], []]);
    await currentPlan({ database, now: at('2027-04-12') });
    await database.read(async (tx) => {
      expect((await orderById(tx, '27-001'))?.status).toBe('lapsed');
      const notices = await openNotices(tx);
      const words = 'The date held for School garden has run out, and its place in the plan is free again.';
      expect(notices.map((notice) => notice.words)).toEqual([words]);
    });
  });

  test('that lapses gives what was set aside for it to whoever comes, one after another', async () => {
    const { orders } = smallYard();
    const two = [orders[0]!, { ...orders[0]!, id: '27-002', customer: 'Allotment' }];
    const finished = [{ casting: 'panel-900', count: 1, order: '27-001' }];
    const { database } = await yardContext(smallYard({ orders: two, finished }));
    for (const { id } of two) await database.write((tx) => updateOrder(tx, id, { heldUntil: '2027-04-08' }));
    const { yard } = await currentPlan({ database, now: at('2027-04-09') });
    expect([yard.orders, yard.finished]).toEqual([[], [{ casting: 'panel-900', count: 1 }]]);
    const words = (await database.read(openNotices)).map((notice) => notice.words);
    expect(words.filter((one) => one.includes('has run out'))).toHaveLength(2);
    await database.write((tx) => updateOrder(tx, '27-001', { status: 'open', heldUntil: null }));
    const again = await database.read((tx) => loadYardFile(tx, at('2027-04-09')));
    expect(again.finished).toEqual([{ casting: 'panel-900', count: 1 }]);
  });

  test('that lapsed can be put back, and its notice goes', async () => {
    const database = await heldUntil('2027-04-08');
    const now = at('2027-04-09');
    await currentPlan({ database, now });
    const [notice] = await database.read(openNotices);
    const undone = await undoChange({ database, now }, notice?.change ?? 0);
    expect(undone).toMatchObject({ ok: true, value: { yard: { orders: [{ id: '27-001' }] } } });
    expect(await database.read(openNotices)).toEqual([]);
  });
});
