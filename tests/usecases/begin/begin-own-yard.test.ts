import { describe, expect, test } from 'vitest';
import { seedDemo } from '../../../db/demo/larch-row.ts';
import { openNotices } from '../../../db/stores/change-store.ts';
import { openOrders } from '../../../db/stores/order-store.ts';
import { beginEmpty } from '../../../src/usecases/begin/begin-own-yard.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import type { UseCaseContext } from '../../../src/usecases/core/context.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { DEMO_NOW } from '../../support/screens.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';

const demoAt = async (now: string): Promise<UseCaseContext> => {
  const database = await temporaryDatabase();
  await database.write((tx) => seedDemo(tx, DEMO_NOW.slice(0, 10), DEMO_NOW));
  return { database, now };
};

describe('a yard that is begun', () => {
  test('has none of the notices of the yard before', async () => {
    const context = await demoAt('2027-05-05T07:30:00Z');
    // A month later the dates that were held have run out.
    await currentPlan(context);
    expect((await context.database.read(openNotices)).length).toBeGreaterThan(0);
    await beginEmpty(context, { name: 'Our yard', timeZone: 'UTC' });
    expect(await context.database.read(openNotices)).toEqual([]);
  });

  test('has no order of the yard before, and they come back as they were when it is undone', async () => {
    const context = await demoAt(DEMO_NOW);
    const before = await context.database.read(openOrders);
    const begun = await beginEmpty(context, { name: 'Our yard', timeZone: 'UTC' });
    if (!begun.ok) throw new Error(JSON.stringify(begun.faults));
    expect(await context.database.read(openOrders)).toEqual([]);
    expect((await undoChange(context, begun.value.change)).ok).toBe(true);
    expect(await context.database.read(openOrders)).toEqual(before);
  });

  test('is not begun without its name and clock, and both are asked for at once', async () => {
    const context = await demoAt(DEMO_NOW);
    const refused = await beginEmpty(context, {});
    expect(refused.ok ? [] : refused.faults.map(({ path }) => path)).toEqual(['name', 'timeZone']);
  });
});
