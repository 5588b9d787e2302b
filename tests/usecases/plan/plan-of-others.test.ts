import { expect, test } from 'vitest';
import { openDatabase } from '../../../db/open.ts';
import { markImproved } from '../../../db/stores/plan-store.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { computeWithoutThread } from '../../../src/usecases/core/computations.ts';
import { type Background, done } from '../../../src/usecases/core/context.ts';
import { changing } from '../../../src/usecases/plan/changing.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { smallYard } from '../../support/small-yard.ts';
import { countedNow } from '../../support/stock-set.ts';
import { temporaryDatabase, temporaryUrl } from '../../support/temporary-database.ts';

const yard = smallYard();
const { now } = yard.yard;

/** The server, and beside it another process on the same file. */
const beside = async () => {
  const url = temporaryUrl();
  const database = await temporaryDatabase(url);
  await database.write((tx) => replaceYard(tx, yard));
  let told = 0;
  let improving = false;
  const background: Background = {
    planMade: () => {
      told += 1;
    },
    improving: () => improving,
    compute: computeWithoutThread,
    computeForRequest: computeWithoutThread,
  };
  const server = { database, now, background };
  await currentPlan(server);
  await database.write(markImproved);
  const count = async (onHand: number) => {
    const other = await openDatabase({ url });
    const counted = await changing({ database: other, now }, { kind: 'counted', words: '' }, async (tx) => {
      await countedNow(tx, 'mortar', onHand);
      return done(null);
    });
    await other.close();
    expect(counted.ok).toBe(true);
  };
  const asked = async () => {
    const before = told;
    await currentPlan(server);
    return told - before;
  };
  return { count, asked, improve: (on: boolean) => (improving = on) };
};

test('a plan that another process made in a hurry is improved here, once', async () => {
  const { count, asked } = await beside();
  expect(await asked()).toBe(0);
  await count(9);
  expect([await asked(), await asked()]).toEqual([1, 0]);
  await count(8);
  expect([await asked(), await asked()]).toEqual([1, 0]);
});

test('while a better plan is being looked for nobody is told; that search looks at the newest plan anyway', async () => {
  const { count, asked, improve } = await beside();
  improve(true);
  await count(9);
  expect(await asked()).toBe(0);
  improve(false);
  expect(await asked()).toBe(1);
});
