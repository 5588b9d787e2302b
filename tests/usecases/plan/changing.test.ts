import { describe, expect, test } from 'vitest';
import { recentChanges } from '../../../db/stores/change-store.ts';
import { updateMaterial } from '../../../db/stores/material-store.ts';
import { updateMould } from '../../../db/stores/mould-store.ts';
import { addOrder, nextOrderId } from '../../../db/stores/order-store.ts';
import { storedPlan } from '../../../db/stores/plan-store.ts';
import { replaceDay } from '../../../db/stores/work-store.ts';
import { loadYardFile, revision } from '../../../db/stores/yard-store.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { done, refuse } from '../../../src/usecases/core/context.ts';
import { changing, previewing } from '../../../src/usecases/plan/changing.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { smallYard } from '../../support/small-yard.ts';
import { countedNow, moreOf } from '../../support/stock-set.ts';
import { yardContext } from '../../support/yard-context.ts';

const kept = <T>(outcome: { ok: true; value: T } | { ok: false; faults: unknown }): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  return outcome.value;
};

describe('a change', () => {
  test('leaves the data, a plan made from just that data, and a record behind', async () => {
    const context = await yardContext();
    const changed = kept(
      await changing(context, { kind: 'stock', words: (left) => `${left} bags counted` }, async (tx) => {
        await countedNow(tx, 'mortar', 12);
        return done(12);
      }),
    );
    expect(changed).toMatchObject({ value: 12, words: '12 bags counted', moved: [] });
    await context.database.read(async (tx) => {
      const yard = await loadYardFile(tx, context.now);
      expect(yard.materials[0]?.onHand).toBe(12);
      expect(changed.yard).toEqual(yard);
      const stored = await storedPlan(tx);
      expect(stored?.revision).toBe(await revision(tx));
      expect(stored?.plan).toEqual(changed.plan);
      expect(stored?.plan).toEqual(planYard(yard, { effort: 'quick' }));
      expect(await recentChanges(tx, 5)).toMatchObject([
        { id: changed.change, kind: 'stock', words: '12 bags counted' },
      ]);
    });
  });

  test('says which days it moved, and that a new order is no move', async () => {
    const context = await yardContext();
    const called = kept(
      await changing(context, { kind: 'no work', words: 'No work on Sat 10 Apr' }, async (tx) => {
        await replaceDay(tx, '2027-04-10', []);
        await addOrder(tx, {
          ...{ id: await nextOrderId(tx, '2027-04-08'), customerId: null, wantedOn: null, promisedOn: null },
          notBefore: null,
          ...{
            heldUntil: null,
            weight: 1,
            note: null,
            address: null,
            takenAt: context.now,
            lines: [{ kit: 'pair', quantity: 1 }],
          },
        });
        return done(null);
      }),
    );
    // Saturday 10 April is called off: the next one is the 17th, seven days after the day promised.
    expect(called.moved).toEqual([
      {
        ...{ order: '27-001', customer: 'School garden', from: '2027-04-10', to: '2027-04-17', daysLate: 7 },
        ...{ isWanted: false, reason: null, kind: 'promise' },
      },
    ]);
    expect(called.plan.orders.map(({ id }) => id)).toEqual(['27-001', '27-002']);
  });

  test('that leaves an order without a mould says why it cannot be made', async () => {
    const context = await yardContext();
    const scrapped = kept(
      await changing(context, { kind: 'scrapped', words: 'Both moulds scrapped' }, async (tx) => {
        await updateMould(tx, '900 no. 1', { condition: 'retired' });
        await updateMould(tx, '900 no. 2', { condition: 'retired' });
        return done(null);
      }),
    );
    expect(scrapped.moved).toMatchObject([{ order: '27-001', from: '2027-04-10', to: null, daysLate: null }]);
    expect(scrapped.moved[0]?.reason).toMatch(/mould/);
  });

  test('that is refused, or fails, leaves nothing behind', async () => {
    const context = await yardContext();
    await currentPlan(context);
    const refused = await changing(context, { kind: 'stock', words: '' }, async (tx) => {
      await countedNow(tx, 'mortar', 0);
      return refuse('quantity', 'That is more than there is.');
    });
    expect(refused).toEqual({ ok: false, faults: [{ path: 'quantity', message: 'That is more than there is.' }] });
    const failing = changing(context, { kind: 'stock', words: '' }, async (tx) => {
      await countedNow(tx, 'mortar', 0);
      throw new Error('a fault of the program');
    });
    await expect(failing).rejects.toThrow('a fault of the program');
    await context.database.read(async (tx) => {
      expect(await loadYardFile(tx, context.now)).toEqual(smallYard());
      expect(await recentChanges(tx, 5)).toEqual([]);
      expect(await revision(tx)).toBe(0);
    });
  });

  test('that would leave data no yard file may hold is rolled back', async () => {
    const context = await yardContext();
    const wrong = changing(context, { kind: 'set', words: '' }, async (tx) => {
      await updateMaterial(tx, 'rod', { stickMm: 200 });
      return done(null);
    });
    await expect(wrong).rejects.toThrow('kits[0].cuts[0].lengthMm');
    expect(await context.database.read((tx) => loadYardFile(tx, context.now))).toEqual(smallYard());
  });

  test('made at the same time as others loses none of them', async () => {
    const context = await yardContext();
    await Promise.all(
      Array.from({ length: 10 }, () =>
        changing(context, { kind: 'stock', words: 'One more bag' }, async (tx) => {
          await moreOf(tx, 'mortar', 1);
          return done(null);
        }),
      ),
    );
    const yard = await context.database.read((tx) => loadYardFile(tx, context.now));
    expect(yard.materials[0]?.onHand).toBe(30);
  });
});

describe('a change that is only tried', () => {
  const callOff = { kind: 'no work', words: 'No work on Sat 10 Apr' };

  test('says which days it would move, and leaves everything as it was', async () => {
    const context = await yardContext();
    const before = (await currentPlan(context)).plan;
    const tried = kept(
      await previewing(context, callOff, async (tx) => {
        await replaceDay(tx, '2027-04-10', []);
        return done(null);
      }),
    );
    expect(tried.moved).toMatchObject([{ customer: 'School garden', from: '2027-04-10', to: '2027-04-17' }]);
    expect((await currentPlan(context)).plan).toEqual(before);
    expect(await context.database.read((tx) => recentChanges(tx, 5))).toEqual([]);
  });

  test('is refused as the change itself would be', async () => {
    const context = await yardContext();
    const tried = await previewing(context, callOff, async () => refuse('date', 'That day is over.'));
    expect(tried).toEqual({ ok: false, faults: [{ path: 'date', message: 'That day is over.' }] });
  });
});
