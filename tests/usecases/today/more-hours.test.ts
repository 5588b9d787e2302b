import { describe, expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { computeWithoutThread } from '../../../src/usecases/core/computations.ts';
import type { UseCaseContext } from '../../../src/usecases/core/context.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { type Edit, effectApart, saveEdit } from '../../../src/usecases/plan/save-edit.ts';
import { leaveForAnotherDay } from '../../../src/usecases/today/leave-out.ts';
import { anotherHour, onePersonMore, runningLate } from '../../../src/usecases/today/more-hours.ts';
import { onePersonFewer } from '../../../src/usecases/today/one-person-fewer.ts';
import { movedOn, retimedSession } from '../../../src/usecases/today/retimed-session.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import type { FormFields } from '../../../src/usecases/typed/form-fields.ts';
import { doneOf } from '../../support/outcomes.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const contextOf = async (changes: Partial<YardFileInput> = {}, clock?: string) => {
  const { database, now } = await yardContext(plannedYard({ finished: [], ...changes }));
  return { database, now: clock ?? now };
};

const SESSION = { session: saturday('08:00') };
/** With a thread of questions: whoever writes meanwhile waits for none of them. */
const withThread = (context: UseCaseContext, told: (kind: string) => void): UseCaseContext => ({
  ...context,
  background: {
    ...{ planMade: () => {}, improving: () => false, computeForRequest: computeWithoutThread },
    compute: async (kind, question) => {
      told(kind);
      await context.database.write(async () => undefined);
      return computeWithoutThread(kind, question);
    },
  },
});

type Ask<T> = (context: UseCaseContext, fields: FormFields) => Edit<T>;

/** What a form is told first, and what comes of it when it is sent again with that in sight. */
const askedThenDone = async <T>(context: UseCaseContext, ask: Ask<T>, fields: FormFields) => {
  const first = await saveEdit(context, ask(context, fields), undefined);
  if (first.kind !== 'moves') throw new Error(JSON.stringify(first));
  const done = await saveEdit(context, ask(context, fields), first.effect.seen);
  if (done.kind !== 'saved') throw new Error(JSON.stringify(done));
  return { effect: first.effect, change: done.change };
};

const refusedWith = async <T>(context: UseCaseContext, ask: Ask<T>, fields: FormFields) => {
  const saved = await saveEdit(context, ask(context, fields), undefined);
  return saved.kind === 'refused' ? saved.faults[0] : null;
};

const hoursOf = async (context: UseCaseContext) =>
  (await currentPlan(context)).yard.extra.map(({ start, end, crew, allows }) => [start, end, crew, allows.length]);

/** Two panels of two moulds are poured by 9:29, and two more want a second turn that needs stripping until 10:52. */
const FOUR = [{ id: '27-001', customer: 'Ann', due: '2027-04-10', lines: [{ casting: 'panel-900', quantity: 4 }] }];

describe('another hour', () => {
  test('is shown with what more is poured and whose day moves, then worked, and undone', async () => {
    const context = await contextOf({ orders: FOUR });
    const before = (await currentPlan(context)).plan;
    const { effect, change } = await askedThenDone(context, anotherHour, SESSION);
    expect(effect.session?.leftOut).toEqual([]);
    expect(await hoursOf(context)).toEqual([['08:00', '13:00', 1, 4]]);
    const { plan } = await currentPlan(context);
    expect(plan.orders[0]?.completesOn).toBe(effect.moved[0]?.to ?? before.orders[0]?.completesOn);
    expect((await undoChange(context, change)).ok).toBe(true);
    expect((await currentPlan(context)).plan.orders).toEqual(before.orders);
  });

  test('changes nothing while it is only shown', async () => {
    const context = await contextOf({ orders: FOUR });
    const { revision } = await currentPlan(context);
    expect((await saveEdit(context, anotherHour(context, SESSION), undefined)).kind).toBe('moves');
    expect((await currentPlan(context)).revision).toBe(revision);
    expect(await hoursOf(context)).toEqual([]);
  });

  test('ends where other hours of the day begin, and there is none where they follow on', async () => {
    const until = (start: string) => ({ extra: [{ date: '2027-04-10', start, end: '17:00' }] });
    const context = await contextOf(until('12:30'));
    await askedThenDone(context, anotherHour, SESSION);
    expect(await hoursOf(context)).toEqual([
      ['08:00', '12:30', 1, 4],
      ['12:30', '17:00', 1, 4],
    ]);
    const late = await contextOf({ work: [], extra: [{ date: '2027-04-10', start: '08:00', end: '24:00' }] });
    expect(await refusedWith(late, anotherHour, SESSION)).toMatchObject({ path: 'session' });
  });
});

describe('one person more', () => {
  test('is there from a time on', async () => {
    const context = await contextOf();
    await askedThenDone(context, onePersonMore, { ...SESSION, at: '09:30' });
    expect(await hoursOf(context)).toEqual([
      ['08:00', '12:00', 1, 4],
      ['09:30', '12:00', 1, 4],
    ]);
  });

  test('is there from now on where no time is named', async () => {
    const context = await contextOf({}, saturday('10:05'));
    await askedThenDone(context, onePersonMore, SESSION);
    expect((await hoursOf(context))[1]).toEqual(['10:05', '12:00', 1, 4]);
  });

  test('is refused for a time that has passed', async () => {
    const context = await contextOf({}, saturday('10:05'));
    expect(await refusedWith(context, onePersonMore, { ...SESSION, at: '09:30' })).toEqual({
      path: 'at',
      message: 'That time has passed.',
    });
  });
});

describe('running late', () => {
  test('says what no longer fits and whose day moves, and keeps one session', async () => {
    // By plan both panels are poured by 9:29 and stripped from 10:37; from 10:30 on there is no time to pour and strip.
    const context = await contextOf({}, saturday('08:05'));
    const { effect } = await askedThenDone(context, runningLate, { ...SESSION, at: '10:30' });
    expect(effect.moved).toMatchObject([{ order: '27-001', from: '2027-04-10', to: '2027-04-17' }]);
    expect(effect.session?.leftOut.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['strip', 'pack']));
    expect(await hoursOf(context)).toEqual([
      ['08:00', '08:05', 1, 4],
      ['08:05', '10:30', 1, 0],
      ['10:30', '12:00', 1, 4],
    ]);
    const { plan } = await currentPlan(context);
    const starts = plan.batches.map(({ start }) => start).filter((start) => start < saturday('12:00'));
    expect(starts.every((start) => start >= saturday('10:30'))).toBe(true);
  });

  test('leaves people as they were: one is not counted three times, and may go home', async () => {
    const crews = [1, 2].map((crew) => ({
      ...{ rule: 'FREQ=WEEKLY;BYDAY=SA', from: '2027-01-02', start: '08:00', end: '12:00', crew },
    }));
    const context = await contextOf({ work: crews }, saturday('08:05'));
    await askedThenDone(context, runningLate, { ...SESSION, at: '08:30' });
    const hours = async () =>
      (await showToday(context)).session?.windows.map(({ start, end, crew }) => [
        ...[start.slice(11, 16), end.slice(11, 16), crew],
      ]);
    expect(await hours()).toEqual([
      ['08:00', '12:00', 1],
      ['08:00', '12:00', 2],
    ]);
    doneOf(await onePersonFewer(context, { ...SESSION, window: 1 }));
    expect(await hours()).toEqual([
      ['08:00', '12:00', 1],
      ['08:00', '12:00', 1],
    ]);
  });

  test('moves what comes later where all of it still fits', async () => {
    const context = await contextOf({}, saturday('08:05'));
    const { effect } = await askedThenDone(context, runningLate, { ...SESSION, at: '08:30' });
    expect(effect).toMatchObject({ moved: [], session: { leftOut: [], morePieces: 0 }, seen: 'no date' });
    const { plan } = await currentPlan(context);
    expect(plan.orders[0]?.completesOn).toBe('2027-04-10');
  });

  test('says what leaving out each order would do instead, and does that at one tap', async () => {
    // Of two orders two pieces each are to be poured; from 9:00 on not all of them come out that day.
    const orders = ['27-001', '27-002'].map((id) => ({
      ...{ id, customer: id === '27-001' ? 'Ann' : 'Ben', due: '2027-04-17' },
      lines: [{ casting: 'panel-900', quantity: 1 }],
    }));
    const context = await contextOf({ orders }, saturday('08:05'));
    const fields = { ...SESSION, at: '08:30' };
    const before = (await currentPlan(context)).plan;
    const asked: string[] = [];
    const answering = withThread(context, (kind) => void asked.push(kind));
    const retimed = doneOf(await retimedSession(answering, fields));
    expect(retimed.toLeave.map(({ customer, pieces }) => [customer, pieces]).sort()).toEqual([
      ['Ann', 1],
      ['Ben', 1],
    ]);
    // What becomes of the session is said before anything is planned.
    expect(asked).toEqual([]);
    const effect = await effectApart(answering, runningLate(answering, { ...fields, without: '27-002' }));
    expect(new Set(asked)).toEqual(new Set(['quick plan']));
    const ben = effect?.ok ? effect.value : null;
    expect(ben?.moved).toMatchObject([{ order: '27-002', from: '2027-04-10', to: '2027-04-17' }]);
    expect(ben?.session?.leftOut.map(({ kind }) => kind).sort()).toEqual(['pour', 'strip']);
    expect((await currentPlan(context)).plan).toEqual(before);
    const done = await saveEdit(context, runningLate(context, { ...fields, without: '27-002' }), ben?.seen);
    if (done.kind !== 'saved') throw new Error(JSON.stringify(done));
    const { plan, yard } = await currentPlan(context);
    expect(yard.orders.find(({ id }) => id === '27-002')?.notBefore).toBe('2027-04-11');
    expect(plan.pours.filter(({ fillStart }) => fillStart < saturday('12:00')).map(({ order }) => order)).toEqual([
      '27-001',
    ]);
    expect((await undoChange(context, done.change)).ok).toBe(true);
    expect((await currentPlan(context)).plan.orders).toEqual(before.orders);
  });
});

describe('a session that moves on', () => {
  const step = (at: string, until: string) => ({
    ...{ kind: 'prep' as const, name: at, mould: 'A', casting: 'a', piece: 'A' },
    ...{ at: saturday(at), until: saturday(until), clean: false, sealed: false, waits: false },
    ...{ changeFrom: null, fittings: [], cuts: [] },
  });
  const steps = [step('08:00', '08:20'), step('09:00', '09:10'), step('11:30', '11:50')];
  const minute = (clock: string) => minuteOf(saturday(clock));
  const moved = (now: string, from: string) => {
    const all = movedOn(steps, { now: minute(now), from: minute(from), to: minute('12:00') }, (at) => String(at));
    return [all.minutes, all.steps.map(({ at }) => Number(at) - minute('08:00')), all.tooLate.map(({ name }) => name)];
  };

  test('has all that has not begun later by as much as the next of it, and says what ends too late', () => {
    expect(moved('08:10', '09:10')).toEqual([10, [70, 220], []]);
    expect(moved('08:10', '09:11')).toEqual([11, [71, 221], ['11:30']]);
    expect(moved('08:10', '08:45')).toEqual([0, [60, 210], []]);
    expect(moved('11:40', '11:50')).toEqual([0, [], []]);
  });
});

describe('what is left for another day', () => {
  test('without other hours: the rest of one order, and what that moves first', async () => {
    const orders = [
      { id: '27-001', customer: 'Ann', due: '2027-04-24', lines: [{ casting: 'panel-900', quantity: 2 }] },
    ];
    const context = await contextOf({ orders }, saturday('08:05'));
    const fields = { ...SESSION, without: '27-001' };
    const { effect } = await askedThenDone(context, leaveForAnotherDay, fields);
    expect(effect.moved).toMatchObject([{ order: '27-001', to: '2027-04-17' }]);
    expect((await currentPlan(context)).plan.pours.every(({ fillStart }) => fillStart > saturday('12:00'))).toBe(true);
    expect(await refusedWith(context, leaveForAnotherDay, fields)).toMatchObject({ path: 'without' });
  });
});
