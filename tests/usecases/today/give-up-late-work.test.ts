import { describe, expect, test } from 'vitest';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { giveUpLateWork } from '../../../src/usecases/today/give-up-late-work.ts';
import { recordPour } from '../../../src/usecases/today/record-pour.ts';
import { recordStrip } from '../../../src/usecases/today/record-strip.ts';
import { writeLateWork } from '../../../src/usecases/today/write-late-work.ts';
import { demoSaturday, namesOf } from '../../support/demo-saturday.ts';

type Day = Awaited<ReturnType<typeof demoSaturday>>;

const givenUp = async ({ context }: Day, clock: string, name: string | null) => {
  const outcome = await giveUpLateWork(context(clock), { step: name, session: null });
  if (!outcome.ok) throw new Error(outcome.faults[0]?.message);
  return outcome.value;
};

const undone = async ({ context }: Day, clock: string, change: number) => {
  const outcome = await undoChange(context(clock), change);
  if (!outcome.ok) throw new Error(outcome.faults[0]?.message);
  return outcome.value;
};

describe('late work that was not done', () => {
  test('is planned anew at once', async () => {
    const day = await demoSaturday();
    const planned = await day.days('13:40');
    const steps = await day.late('13:40');
    expect(steps.length).toBeGreaterThan(3);
    const { words } = await givenUp(day, '13:45', null);
    expect(words).toMatch(/^\d+ pieces not poured, \d+ not stripped/);
    expect(await day.late('13:46')).toEqual([]);
    expect(await day.days('13:46')).not.toEqual(planned);
  });

  test('is on its list again when that is undone, and off it again when that is undone in turn', async () => {
    const day = await demoSaturday();
    const [steps, planned] = [await day.late('13:40'), await day.days('13:40')];
    const { change } = await givenUp(day, '13:45', null);
    const released = await day.days('13:46');
    const back = await undone(day, '13:50', change);
    expect(namesOf(await day.late('13:51'))).toEqual(namesOf(steps));
    expect(await day.days('13:51')).toEqual(planned);
    const again = await undone(day, '13:52', back.change);
    expect(await day.late('13:53')).toEqual([]);
    expect(await day.days('13:53')).toEqual(released);
    await undone(day, '13:54', again.change);
    expect(namesOf(await day.late('13:55'))).toEqual(namesOf(steps));
  });

  test('goes step by step, with what cannot be without it; the rest stays and is written down', async () => {
    const day = await demoSaturday();
    const lines = await day.lines('13:40');
    const last = lines.filter(({ step }) => step.kind === 'batch').at(-1);
    if (last?.step.kind !== 'batch') throw new Error('no batch');
    const { words, change } = await givenUp(day, '13:45', last.name);
    expect(words).toMatch(/ not poured$/);
    for (const { mould } of last.step.pours) expect(words).toContain(mould);
    const left = (await day.lines('13:46')).map(({ name }) => name);
    expect(left).not.toContain(last.name);
    expect(left.length).toBeGreaterThan(lines.length / 2);
    await undone(day, '13:47', change);
    expect((await day.lines('13:48')).map(({ name }) => name)).toEqual(lines.map(({ name }) => name));
    await givenUp(day, '13:49', last.name);
    expect((await writeLateWork(day.context('13:50'))).ok).toBe(true);
    expect(await day.late('13:51')).toEqual([]);
  });

  test('of which a strip was not done, has its piece in the mould until later', async () => {
    const day = await demoSaturday();
    const lines = await day.lines('13:40');
    const strip = lines.find(({ step }) => step.kind === 'strip' && !step.inMould);
    if (!strip) throw new Error('no strip of a late pour');
    const { change } = await givenUp(day, '13:45', strip.name);
    const left = (await day.lines('13:46')).map(({ name }) => name);
    expect(left).not.toContain(strip.name);
    await undone(day, '13:47', change);
    expect((await day.lines('13:48')).map(({ name }) => name)).toEqual(lines.map(({ name }) => name));
  });

  test('is refused by a name that is no longer on the list', async () => {
    const { context } = await demoSaturday();
    const message = 'That is no longer to be recorded. Nothing was changed.';
    expect(await giveUpLateWork(context('13:45'), { step: 'late-batch-1-x', session: null })).toEqual({
      ok: false,
      faults: [{ path: 'late', message }],
    });
  });
});

describe('a late step that was written down', () => {
  test('is on the list again when that is undone, and off it when that is undone in turn', async () => {
    const day = await demoSaturday();
    const steps = await day.late('13:40');
    const first = steps.find((step) => step.kind === 'batch');
    if (first?.kind !== 'batch') throw new Error('no batch');
    const full =
      first.pours
        .map(({ until }) => until)
        .sort()
        .at(-1) ?? null;
    const poured = await recordPour(day.context('13:41'), { pours: first.pours, bags: first.bags, filledAt: full });
    if (!poured.ok) throw new Error(poured.faults[0]?.message);
    const left = namesOf(await day.late('13:42'));
    expect(left).not.toEqual(namesOf(steps));
    const { change } = await undone(day, '13:43', poured.value.change);
    expect(namesOf(await day.late('13:44'))).toEqual(namesOf(steps));
    await undone(day, '13:45', change);
    expect(namesOf(await day.late('13:46'))).toEqual(left);
  });

  test('whatever else was written down since', async () => {
    const day = await demoSaturday();
    const steps = await day.late('13:40');
    const strips = steps.flatMap((step) => (step.kind === 'strip' && step.inMould ? [step] : []));
    const tap = async (place: number, clock: string) => {
      const { mould, until } = strips[place]!;
      const outcome = await recordStrip(day.context(clock), { mould, cameOut: 'good', reason: '', at: until });
      if (!outcome.ok) throw new Error(outcome.faults[0]?.message);
      return outcome.value.change;
    };
    expect(strips.length).toBeGreaterThan(1);
    const change = await tap(0, '13:41');
    await tap(1, '13:42');
    const left = namesOf(await day.late('13:43'));
    await undone(day, '13:44', change);
    const back = namesOf(await day.late('13:45'));
    expect(back.length).toBe(left.length + 1);
    expect(back).toContainEqual(namesOf([strips[0]!])[0]);
  });
});
