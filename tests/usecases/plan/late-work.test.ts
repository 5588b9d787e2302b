import { describe, expect, test } from 'vitest';
import { mouldById } from '../../../db/stores/mould-store.ts';
import { storedPlan } from '../../../db/stores/plan-store.ts';
import { askWhen } from '../../../src/usecases/first/ask-when.ts';
import { packOrder } from '../../../src/usecases/orders/pack-order.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { recordCoat } from '../../../src/usecases/today/record-coat.ts';
import { recordPour } from '../../../src/usecases/today/record-pour.ts';
import { recordPrep } from '../../../src/usecases/today/record-prep.ts';
import { recordStrip } from '../../../src/usecases/today/record-strip.ts';
import type { SessionStep } from '../../../src/usecases/today/session-step.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { fixHours } from '../../../src/usecases/yard/fix-hours.ts';
import { demoAt as at, demoSaturday as demoDay, namesOf } from '../../support/demo-saturday.ts';

type Work = Exclude<SessionStep, { kind: 'set up' | 'clear up' }>;
type Context = ReturnType<Awaited<ReturnType<typeof demoDay>>['context']>;

/** Fills end before a batch is washed up; the last of them is when its moulds were full. */
const fullAt = (step: Extract<Work, { kind: 'batch' }>): string =>
  new Date(Math.max(...step.pours.map(({ until }) => Date.parse(until)))).toISOString().replace('.000', '');

const writeAsPlanned = (step: Work, context: Context) => {
  if (step.kind === 'coat') return recordCoat(context, { mould: step.mould, at: step.until });
  if (step.kind === 'prep')
    return recordPrep(context, { mould: step.mould, casting: step.casting, sealed: step.sealed, at: step.until });
  if (step.kind === 'strip')
    return recordStrip(context, { mould: step.mould, cameOut: 'good', reason: '', at: step.until });
  if (step.kind === 'pack') return packOrder(context, step.order, { evenShort: false, at: step.until });
  return recordPour(context, { pours: step.pours, bags: step.bags, filledAt: fullAt(step) });
};

/** The next step that can be written down: a piece comes out of its mould only once it is in. */
const nextOf = (steps: readonly SessionStep[]): Work | undefined =>
  (steps as readonly Work[]).find(
    (step) =>
      !(step.kind === 'strip' && !step.inMould) &&
      !((step.kind === 'coat' || step.kind === 'prep' || step.kind === 'batch') && step.waits),
  );

describe('after a session', () => {
  test('what is not recorded stays, in the plan and on Today, the next day too, and no date moves', async () => {
    const { database, late, days } = await demoDay();
    const planned = await days('13:29');
    const steps = await late('13:30');
    expect(steps.filter(({ kind }) => kind === 'batch').length).toBeGreaterThan(3);
    expect(namesOf(await late('16:29'))).toEqual(namesOf(steps));
    const sunday = { database, now: '2027-04-11T09:00:00+01:00' };
    // What was ready on Saturday and is there still goes out on the next day for that.
    const toCome = planned.filter(([, day]) => day! > '2027-04-10');
    const { orders } = (await currentPlan(sunday)).plan;
    expect(toCome.length).toBeGreaterThan(5);
    for (const one of toCome) expect(orders.map(({ id, completesOn }) => [id, completesOn])).toContainEqual(one);
    const { late: sessions } = await showToday(sunday);
    expect(sessions.map(({ date }) => date)[0]).toBe('2027-04-10');
    expect(namesOf(sessions[0]!.lines.map(({ step }) => step))).toEqual(namesOf(steps));
  });

  test('another change plans round it: nothing of it moves, and no date does', async () => {
    const { context, late, days } = await demoDay();
    const [steps, planned] = [await late('13:40'), await days('13:40')];
    const outcome = await fixHours(context('13:40'), 12);
    expect(outcome).toMatchObject({ ok: true, value: { moved: [] } });
    expect(namesOf(await late('13:41'))).toEqual(namesOf(steps));
    expect(await days('13:41')).toEqual(planned);
  });

  test('all of it is written down as planned, one after another, and the plan goes on as it was', async () => {
    const { database, context, late, days } = await demoDay();
    await fixHours(context('13:40'), 12);
    const planned = await days('13:41');
    const made = (await database.read(storedPlan))?.madeAt;
    let taps = 0;
    for (let next = nextOf(await late('13:45')); next; next = nextOf(await late('13:45'))) {
      const outcome = await writeAsPlanned(next, context('13:45'));
      if (!outcome.ok) throw new Error(`${next.kind} of ${next.at}: ${outcome.faults[0]?.message}`);
      expect(outcome.value.moved).toEqual([]);
      taps += 1;
      if (taps > 100) throw new Error('it never ends');
    }
    expect(taps).toBeGreaterThan(10);
    expect(await late('13:46')).toEqual([]);
    expect((await database.read(storedPlan))?.madeAt).toBe(made);
    expect(await days('13:46')).toEqual(planned);
  });

  test('a batch poured only now is written down so, and the rest stays as it was planned', async () => {
    const { database, context, late } = await demoDay();
    const steps = (await late('13:40')) as Work[];
    const first = steps.find((step) => step.kind === 'batch');
    if (first?.kind !== 'batch') throw new Error('no batch');
    expect(first.waits).toBe(false);
    const outcome = await recordPour(context('13:40'), { pours: first.pours, bags: first.bags, filledAt: null });
    expect(outcome.ok).toBe(true);
    // The last of its moulds was full just now, the others before it.
    const mould = first.pours.at(-1)?.mould ?? '';
    expect((await database.read((tx) => mouldById(tx, mould)))?.piece?.filledAt).toBe(at('13:40'));
    // A second turn of its moulds cannot have been; all else can.
    const moulds = new Set(first.pours.map((pour) => pour.mould));
    const others = steps.filter((step) => step.kind === 'batch' && !step.pours.some((pour) => moulds.has(pour.mould)));
    const left = namesOf(await late('13:41'));
    expect(others.length).toBeGreaterThan(1);
    for (const step of namesOf(others)) expect(left).toContainEqual(step);
  });

  test('a question for a new order counts on it as the plan does', async () => {
    const ask = async (clock: string, before: string[] = []) => {
      const { context, late } = await demoDay();
      for (const one of before) await late(one);
      const asked = await askWhen(context(clock), [{ row: 0, line: { casting: 'panel-900', quantity: 1 } }]);
      return asked.ok ? asked.value.earliestOn : null;
    };
    const [during, after] = [await ask('13:29'), await ask('20:40')];
    expect(after).toBe(during);
  });
});
