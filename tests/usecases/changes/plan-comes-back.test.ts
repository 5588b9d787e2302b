import { expect, test } from 'vitest';
import { seedDemo } from '../../../db/demo/larch-row.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { markMould } from '../../../src/usecases/moulds/mark-mould.ts';
import { improvePlan } from '../../../src/usecases/plan/improve-plan.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { doneOf } from '../../support/outcomes.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';

const demo = async () => {
  const database = await temporaryDatabase();
  const now = '2027-04-07T09:00:00+01:00';
  await database.write((tx) => seedDemo(tx, '2027-04-07', now));
  const at = (later: string) => ({ database, now: later });
  await currentPlan(at(now));
  await improvePlan(at(now));
  const plan = async () => {
    const { pours, orders } = (await currentPlan(at('2027-04-07T09:05:00+01:00'))).plan;
    return {
      pours: pours.map(({ mould, fillStart }) => `${mould} ${fillStart}`).sort(),
      days: orders.map(({ id, completesOn }) => `${id} ${completesOn}`).sort(),
    };
  };
  return { at, plan };
};

/* In a season 122 undone acts moved days by 585 in all: undoing restored the data and not the plan. */
test('the plan of before comes back when a mould was damaged by mistake', async () => {
  const { at, plan } = await demo();
  const before = await plan();
  const marked = doneOf(
    await markMould(at('2027-04-07T09:02:00+01:00'), '900 no. 1', 'damaged', {
      note: '',
      repairedOn: null,
      cameOut: null,
    }),
  );
  expect(await plan()).not.toEqual(before);
  doneOf(await undoChange(at('2027-04-07T09:03:00+01:00'), marked.change));
  expect(await plan()).toEqual(before);
});
