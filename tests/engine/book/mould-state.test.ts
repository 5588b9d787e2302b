import { describe, expect, test } from 'vitest';
import type { Mould } from '../../../shared/mould.ts';
import {
  afterPour,
  afterSetUp,
  afterStrip,
  isCoatDue,
  isMendedByDay,
  setUpMinutes,
  wasCoated,
} from '../../../src/engine/book/mould-state.ts';
import { plannedYard } from '../../support/planned-yard.ts';

const [ready] = plannedYard().moulds;
const damaged: Mould = { ...ready!, condition: 'damaged', turnsSinceOil: 3 };

test('a coat is due after as many turns as it lasts, and never without that', () => {
  expect([isCoatDue(7, 8), isCoatDue(8, 8), isCoatDue(9, 8), isCoatDue(50, undefined)]).toEqual([
    ...[false, true, true, false],
  ]);
});

test('a coat was given where the plan says so or one was due', () => {
  const mould = (turnsSinceOil: number) => ({ turnsSinceOil, oilEveryTurns: 8 });
  expect(wasCoated(mould(8), { oiled: false })).toBe(true);
  expect(wasCoated(mould(7), { oiled: false })).toBe(false);
  expect(wasCoated(mould(0), { oiled: true })).toBe(true);
});

test('a damaged mould is mended from its day on, a scrapped one never', () => {
  const byDay = (repairedOn?: string) => isMendedByDay({ condition: 'damaged', repairedOn }, '2027-04-10');
  expect([byDay('2027-04-09'), byDay('2027-04-10'), byDay('2027-04-11'), byDay()]).toEqual([true, true, false, false]);
  expect(isMendedByDay({ condition: 'retired', repairedOn: '2027-04-09' }, '2027-04-10')).toBe(false);
});

// 5 of setting up, 6 of cleaning, 12 of changing over, 10 of coating.
test('a set-up takes what there is to do', () => {
  const casting = { prepMinutes: 5, cleanMinutes: 6 };
  expect(setUpMinutes(casting, 10, 12, true, false)).toBe(23);
  expect(setUpMinutes(casting, 10, 12, false, true)).toBe(27);
  expect(setUpMinutes(casting, 10, 0, false, false)).toBe(5);
});

describe('a mould after work', () => {
  test('poured has turned once more since its coat', () => {
    const patch = { condition: 'ready', prepped: false, setFor: 'kerb' };
    expect(afterPour({ ...ready!, condition: 'dirty', turnsSinceOil: 3 }, 'kerb', false)).toEqual({
      ...{ ...patch, turnsSinceOil: 4 },
    });
    expect(afterPour({ ...ready!, turnsSinceOil: 8 }, 'kerb', true)).toEqual({ ...patch, turnsSinceOil: 1 });
    expect(afterPour(damaged, 'kerb', false).condition).toBe('damaged');
  });

  test('stripped is dirty, unless it is out of use', () => {
    expect(afterStrip(ready!, 'kerb')).toEqual({ condition: 'dirty', prepped: false, setFor: 'kerb' });
    expect(afterStrip(damaged, 'kerb').condition).toBe('damaged');
  });

  test('set up has nothing left to do', () => {
    const patch = { condition: 'ready', prepped: true, setFor: 'kerb' };
    expect(afterSetUp(damaged, 'kerb', false)).toEqual({ ...patch, turnsSinceOil: 3 });
    expect(afterSetUp(damaged, 'kerb', true)).toEqual({ ...patch, turnsSinceOil: 0 });
  });
});
