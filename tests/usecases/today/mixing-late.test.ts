import { expect, test } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import { clockWords } from '../../../src/usecases/core/day-words.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { startMixing } from '../../../src/usecases/today/start-mixing.ts';
import { demoAt, demoSaturday } from '../../support/demo-saturday.ts';
import { doneOf } from '../../support/outcomes.ts';

/** What is mixed on the Saturday, by the moulds of each batch. */
const mixed = ({ batches, pours }: PlanFile): string[] =>
  batches
    .filter(({ start }) => start.startsWith(demoAt('00:00').slice(0, 10)))
    .map(({ id }) =>
      pours
        .filter(({ batch }) => batch === id)
        .map(({ mould }) => mould)
        .sort()
        .join(', '),
    )
    .sort();

const clockLater = (instant: string, minutes: number): string => {
  const [hours = 0, mins = 0] = clockWords(instant).split(':').map(Number);
  const at = hours * 60 + mins + minutes;
  return `${String(Math.floor(at / 60)).padStart(2, '0')}:${String(at % 60).padStart(2, '0')}`;
};

/* There are a few minutes between the tasks of a full Saturday and its end: the rest begins later, and all of it is mixed. */
test.each([
  ['first', 0, 4],
  ['fourth', 3, 8],
])('the %s batch of a full Saturday begun late leaves every other and every day', async (_which, place, late) => {
  const { context, days } = await demoSaturday();
  const { plan } = await currentPlan(context('07:30'));
  const before = { mixed: mixed(plan), days: await days('07:30') };
  const batch = plan.batches.toSorted((a, b) => a.start.localeCompare(b.start))[place]!;
  const { mould } = plan.pours.find((pour) => pour.batch === batch.id)!;
  const clock = clockLater(batch.start, late);
  doneOf(await startMixing(context(clock), { mould, at: batch.start }));
  expect(mixed((await currentPlan(context(clock))).plan)).toEqual(before.mixed);
  expect(await days(clock)).toEqual(before.days);
});
