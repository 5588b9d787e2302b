import { describe, expect, test } from 'vitest';
import { replaceDay } from '../../../db/stores/work-store.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { callOffWork } from '../../../src/usecases/today/call-off-work.ts';
import { onePersonFewer } from '../../../src/usecases/today/one-person-fewer.ts';
import { stopAt } from '../../../src/usecases/today/stop-at.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const saturdays = (start: string, end: string, crew = 1) => ({
  rule: 'FREQ=WEEKLY;BYDAY=SA',
  from: '2027-01-02',
  start,
  end,
  crew,
});

const contextOf = async (changes: Partial<YardFileInput> = {}, clock?: string) => {
  const { database, now } = await yardContext(plannedYard({ finished: [], ...changes }));
  return { database, now: clock ?? now };
};
type Context = Awaited<ReturnType<typeof contextOf>>;

const extraOf = async (context: Context) => (await currentPlan(context)).yard.extra;
const faultOf = (outcome: { ok: true } | { ok: false; faults: { path: string; message: string }[] }) =>
  outcome.ok ? null : outcome.faults[0];

describe('no work on a day', () => {
  test('moves what was planned for it, says which dates, and is undone', async () => {
    const context = await contextOf();
    const outcome = await callOffWork(context, '2027-04-10');
    expect(outcome).toMatchObject({
      ok: true,
      value: {
        words: 'No work on Sat 10 Apr',
        moved: [{ order: '27-001', from: '2027-04-10', to: '2027-04-17', daysLate: 7 }],
      },
    });
    if (!outcome.ok) return;
    const undone = await undoChange(context, outcome.value.change);
    expect(undone).toMatchObject({
      ok: true,
      value: { moved: [{ order: '27-001', from: '2027-04-17', to: '2027-04-10' }] },
    });
    expect((await currentPlan(context)).yard.closed).toEqual([]);
  });

  test('shuts its one-off hours too', async () => {
    const context = await contextOf({ extra: [{ date: '2027-04-09', start: '09:00', end: '12:00' }] });
    expect((await callOffWork(context, '2027-04-09')).ok).toBe(true);
    expect(await extraOf(context)).toEqual([]);
  });

  test('is refused for a day that has passed, and for one without hours', async () => {
    const context = await contextOf();
    expect(faultOf(await callOffWork(context, '2027-04-03'))?.message).toContain('That day has passed.');
    expect(faultOf(await callOffWork(context, '2027-04-11'))?.message).toContain('There are no hours on Sun 11 Apr');
  });
});

describe('stopping earlier', () => {
  const at = (clock: string) => ({ session: saturday('08:00'), at: clock });

  test('shortens the hours that go on longer, drops those that begin later, and leaves other sessions', async () => {
    const context = await contextOf({
      work: [
        saturdays('08:00', '12:00'),
        saturdays('09:00', '11:30', 2),
        saturdays('10:00', '12:00'),
        saturdays('16:30', '17:15'),
      ],
    });
    expect(await stopAt(context, at('10:00'))).toMatchObject({
      ok: true,
      value: { words: 'Work on Sat 10 Apr stops at 10:00' },
    });
    const hours = (await extraOf(context)).map(({ start, end, crew }) => [start, end, crew]);
    expect(hours).toEqual([
      ['08:00', '10:00', 1],
      ['09:00', '10:00', 2],
      ['16:30', '17:15', 1],
    ]);
  });

  test('moves what no longer fits', async () => {
    // Both panels are stripped from 10:37 at the earliest, as the plan made by hand has it.
    const context = await contextOf();
    expect(await stopAt(context, at('10:30'))).toMatchObject({
      ok: true,
      value: { moved: [{ order: '27-001', to: '2027-04-17' }] },
    });
  });

  test.each([
    ['noon', 'When? Write a time such as 11:30.'],
    ['08:00', 'Write a time between 08:00 and 12:00.'],
    ['12:00', 'Write a time between 08:00 and 12:00.'],
    ['08:30', 'That time has passed.'],
  ])('at %s is refused', async (clock, message) => {
    const context = await contextOf({}, saturday('09:00'));
    expect(faultOf(await stopAt(context, at(clock)))).toEqual({ path: 'at', message });
  });

  test('is refused when the hours are over or no longer there', async () => {
    const context = await contextOf({}, saturday('12:30'));
    expect(faultOf(await stopAt(context, at('11:00')))?.message).toContain('Those hours are over.');
    const other = await contextOf();
    await other.database.write((tx) => replaceDay(tx, '2027-04-10', []));
    expect(faultOf(await stopAt(other, at('11:00')))?.message).toContain('have been changed meanwhile');
    expect(faultOf(await stopAt(other, { session: 'x', at: '11:00' }))?.message).toContain(
      'have been changed meanwhile',
    );
  });
});

describe('one person fewer', () => {
  const session = saturday('08:00');
  const work = [saturdays('08:00', '12:00'), saturdays('09:00', '11:30', 2)];

  test('takes one out of the hours chosen', async () => {
    const context = await contextOf({ work });
    expect(await onePersonFewer(context, { session, window: 1 })).toMatchObject({
      ok: true,
      value: { words: 'One person fewer on Sat 10 Apr' },
    });
    expect((await extraOf(context)).map(({ start, crew }) => [start, crew])).toEqual([
      ['08:00', 1],
      ['09:00', 1],
    ]);
    await onePersonFewer(context, { session, window: 0 });
    expect((await extraOf(context)).map(({ start, crew }) => [start, crew])).toEqual([['09:00', 1]]);
  });

  test('leaves someone', async () => {
    const context = await contextOf();
    expect(faultOf(await onePersonFewer(context, { session, window: 0 }))?.message).toContain('Nobody would be left.');
  });

  test.each([null, 2, -1])('is refused for hours that are not there: %o', async (window) => {
    const context = await contextOf({ work });
    expect(faultOf(await onePersonFewer(context, { session, window }))).toEqual({
      path: 'window',
      message: "Choose who can't come.",
    });
  });
});
