import type { Database } from '../../db/open.ts';
import { savePlan, storedPlan } from '../../db/stores/plan-store.ts';
import { replaceYard } from '../../db/stores/replace-yard.ts';
import type { PlanFile } from '../../shared/plan.ts';
import { planYard } from '../../src/engine/plan.ts';
import type { UseCaseContext } from '../../src/usecases/core/context.ts';
import { currentPlan } from '../../src/usecases/plan/make-plan.ts';
import { smallYard } from './small-yard.ts';
import { temporaryDatabase } from './temporary-database.ts';

/**
 * The small yard with a stored plan that a longer search beats: it is one for 900 no. 1 alone, so that the order, which
 * was promised for Saturday 17 April and asks for six panels, is ready a Saturday later than it could be.
 */
export const worsePlanYard = smallYard({
  work: [{ rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '08:00', end: '13:00' }],
  orders: [{ id: '27-001', customer: 'School garden', due: '2027-04-17', lines: [{ kit: 'pair', quantity: 3 }] }],
});

export const worsePlan = (): PlanFile => {
  const moulds = worsePlanYard.moulds.filter(({ id }) => id === '900 no. 1');
  return planYard({ ...worsePlanYard, moulds }, { effort: 'quick' });
};

/** In place of the plan that is stored, and as little searched through. */
export const storeWorsePlan = (database: Database): Promise<void> =>
  database.write(async (tx) => {
    const stored = await storedPlan(tx);
    if (!stored) throw new Error('No plan was stored.');
    await savePlan(tx, { ...stored, plan: worsePlan(), memory: null, improved: false });
  });

export const withWorsePlan = async (): Promise<UseCaseContext> => {
  const database = await temporaryDatabase();
  const context = { database, now: worsePlanYard.yard.now };
  await database.write((tx) => replaceYard(tx, worsePlanYard));
  await currentPlan(context);
  await storeWorsePlan(database);
  return context;
};
