import { describe, expect, test } from 'vitest';
import { countMaterial } from '../../../src/usecases/buying/count-material.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { giveUpLateWork } from '../../../src/usecases/today/give-up-late-work.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { demoSaturday, namesOf } from '../../support/demo-saturday.ts';
import { minutesLater } from '../../support/minutes-later.ts';
import { doneOf } from '../../support/outcomes.ts';

type Day = Awaited<ReturnType<typeof demoSaturday>>;

/** The first batch of the demo's Saturday, and the clock five minutes after it began. */
const firstBatch = async ({ context }: Day) => {
  const { steps } = await showToday(context('07:30'));
  const batch = steps.find(({ kind }) => kind === 'batch');
  if (batch?.kind !== 'batch') throw new Error('no batch');
  return { batch, midway: minutesLater(batch.at, 5).slice(11, 16) };
};

const batchesOf = async ({ context }: Day, clock: string) =>
  (await currentPlan(context(clock))).plan.batches.map(({ start, pours }) => [start, pours.length]);

describe('a batch of the session', () => {
  test('is under way from the minute it begins until it is over, and late from then on', async () => {
    const day = await demoSaturday();
    const { batch } = await firstBatch(day);
    const seen = async (instant: string) => {
      const { begun, steps } = await showToday(day.context(instant.slice(11, 16)));
      const listed = steps.some(({ kind, at }) => kind === 'batch' && at === batch.at);
      return [begun.some(({ step }) => step.at === batch.at && step.kind === 'batch'), listed];
    };
    expect(await seen(minutesLater(batch.at, -1))).toEqual([false, true]);
    expect(await seen(batch.at)).toEqual([true, true]);
    expect(await seen(minutesLater(batch.until, -1))).toEqual([true, true]);
    expect(await seen(batch.until)).toEqual([false, true]);
  });

  test('that is under way stands in the very list of its session', async () => {
    const day = await demoSaturday();
    const { midway } = await firstBatch(day);
    const { begun, steps } = await showToday(day.context(midway));
    expect(begun.length).toBeGreaterThan(0);
    for (const { step } of begun) expect(steps).toContain(step);
  });

  test('stays as it was when something is counted in the middle of it', async () => {
    const day = await demoSaturday();
    const { batch, midway } = await firstBatch(day);
    const before = await batchesOf(day, midway);
    doneOf(await countMaterial(day.context(midway), 'corner-clip', { text: '9' }));
    expect(await batchesOf(day, midway)).toContainEqual(before.find(([start]) => start === batch.at));
  });
});

describe('a step that counts as under way and was not begun', () => {
  test('is planned anew at once, and is back when that is undone', async () => {
    const day = await demoSaturday();
    const { batch, midway } = await firstBatch(day);
    const { begun } = await showToday(day.context(midway));
    const line = begun.find(({ step }) => step.kind === 'batch');
    const { words, change } = doneOf(
      await giveUpLateWork(day.context(midway), { step: line?.name ?? '', session: null }),
    );
    expect(words).toContain(`${batch.pours[0]?.mould}`);
    expect(words).toMatch(/ not poured$/);
    const left = (await showToday(day.context(midway))).begun.map(({ name }) => name);
    expect(left).not.toContain(line?.name);
    doneOf(await undoChange(day.context(midway), change));
    expect(namesOf((await showToday(day.context(midway))).begun.map(({ step }) => step))).toEqual(
      namesOf(begun.map(({ step }) => step)),
    );
  });

  test('is back, also when other things were done since', async () => {
    const day = await demoSaturday();
    const { batch, midway } = await firstBatch(day);
    const { begun } = await showToday(day.context(midway));
    const name = begun.find(({ step }) => step.kind === 'batch')?.name ?? '';
    const { change } = doneOf(await giveUpLateWork(day.context(midway), { step: name, session: null }));
    doneOf(await countMaterial(day.context(midway), 'corner-clip', { text: '9' }));
    doneOf(await undoChange(day.context(midway), change));
    expect((await showToday(day.context(midway))).begun.map((line) => line.name)).toContain(name);
    expect((await batchesOf(day, midway)).filter(([start]) => start === batch.at)).toHaveLength(1);
  });
});
