import { describe, expect, test } from 'vitest';
import type { UseCaseContext } from '../../../src/usecases/core/context.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { callOffWork } from '../../../src/usecases/today/call-off-work.ts';
import { onePersonFewer } from '../../../src/usecases/today/one-person-fewer.ts';
import { planSessionAnew } from '../../../src/usecases/today/plan-session-anew.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { stopAt } from '../../../src/usecases/today/stop-at.ts';
import { doneOf } from '../../support/outcomes.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/** Planned at 7:30 for two people: no. 1 is set up from 8:10 to 8:22, then mixed for until 8:39. */
const morning = async () => {
  const base = plannedYard({ yard: { ...plannedYard().yard, now: saturday('07:30') } });
  const work = base.work.map((hours) => ({ ...hours, crew: 2 }));
  const { database } = await yardContext({ ...base, work });
  const at = (clock: string) => ({ database, now: saturday(clock) });
  await currentPlan(at('07:30'));
  return at;
};

const CHANGES: [string, (context: UseCaseContext) => Promise<unknown>][] = [
  ['no work that day', async (context) => doneOf(await callOffWork(context, '2027-04-10'))],
  ['an earlier end', async (context) => doneOf(await stopAt(context, { session: saturday('08:00'), at: '08:35' }))],
  [
    'one person fewer',
    async (context) => doneOf(await onePersonFewer(context, { session: saturday('08:00'), window: 0 })),
  ],
];

const begunAt = async (context: UseCaseContext) =>
  (await showToday(context)).begun.map(({ step }) => [step.kind, step.at, step.until]);

describe.each(CHANGES)('with %s', (_which, change) => {
  test('a batch that is under way goes on until it is over, and is then to be recorded', async () => {
    const at = await morning();
    await change(at('08:25'));
    expect(await begunAt(at('08:26'))).toEqual([['batch', saturday('08:22'), saturday('08:39')]]);
    const { plan } = await currentPlan(at('08:26'));
    expect(plan.batches.filter(({ start }) => start === saturday('08:22'))).toHaveLength(1);
    expect(await begunAt(at('08:39'))).toEqual([]);
    const { late, steps } = await showToday(at('08:39'));
    const listed = [...steps, ...late.flatMap(({ lines }) => lines.map(({ step }) => step))];
    expect(listed.filter(({ kind, at: from }) => kind === 'batch' && from === saturday('08:22'))).toHaveLength(1);
  });

  test('a mould that is being set up is', async () => {
    const at = await morning();
    await change(at('08:15'));
    expect(await begunAt(at('08:16'))).toContainEqual(['prep', saturday('08:10'), saturday('08:22')]);
  });
});

test('a session that is planned anew keeps what is under way in it', async () => {
  const at = await morning();
  doneOf(await planSessionAnew(at('08:15'), saturday('08:00')));
  expect(await begunAt(at('08:16'))).toContainEqual(['prep', saturday('08:10'), saturday('08:22')]);
  const { plan } = await currentPlan(at('08:16'));
  expect(plan.pours.map(({ mould, prepStart }) => [mould, prepStart])).toContainEqual(['900 no. 1', saturday('08:10')]);
});
