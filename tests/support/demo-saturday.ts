import { seedDemo } from '../../db/demo/larch-row.ts';
import { currentPlan } from '../../src/usecases/plan/make-plan.ts';
import type { SessionStep } from '../../src/usecases/today/session-step.ts';
import { showToday } from '../../src/usecases/today/show-today.ts';
import { temporaryDatabase } from './temporary-database.ts';

const SATURDAY = '2027-04-10';

export const demoAt = (clock: string): string => `${SATURDAY}T${clock}:00+01:00`;

/** The demo on a Saturday of which nothing is written down; its session ends at 13:30. */
export const demoSaturday = async () => {
  const database = await temporaryDatabase();
  await database.write((tx) => seedDemo(tx, SATURDAY, `${SATURDAY}T06:00:00Z`));
  const context = (clock: string) => ({ database, now: demoAt(clock) });
  await currentPlan(context('07:30'));
  const lines = async (clock: string) => (await showToday(context(clock))).late.flatMap(({ lines }) => lines);
  const late = async (clock: string) => (await lines(clock)).map(({ step }) => step);
  const days = async (clock: string) =>
    (await currentPlan(context(clock))).plan.orders.map(({ id, completesOn }) => [id, completesOn]);
  return { database, context, lines, late, days };
};

/** What each step is, when it is, and of which moulds. */
export const namesOf = (steps: readonly SessionStep[]) =>
  steps.map((step) => [step.kind, step.at, 'pours' in step ? step.pours.map(({ mould }) => mould) : step.kind]);
