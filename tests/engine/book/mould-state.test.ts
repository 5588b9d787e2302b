import { describe, expect, test } from 'vitest';
import type { Mould } from '../../../shared/mould.ts';
import {
  afterCoat,
  afterPour,
  afterSetUp,
  afterStrip,
  coatMinutes,
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

test('a coat that nobody wrote down was given where one was due, and the mould was not set up', () => {
  const mould = (turnsSinceOil: number, prepped = false) => ({ turnsSinceOil, oilEveryTurns: 8, prepped });
  expect(wasCoated(mould(8))).toBe(true);
  expect(wasCoated(mould(7))).toBe(false);
  expect(wasCoated(mould(8, true))).toBe(false);
});

test('a damaged mould is mended from its day on, a scrapped one never', () => {
  const byDay = (repairedOn?: string) => isMendedByDay({ condition: 'damaged', repairedOn }, '2027-04-10');
  expect([byDay('2027-04-09'), byDay('2027-04-10'), byDay('2027-04-11'), byDay()]).toEqual([true, true, false, false]);
  expect(isMendedByDay({ condition: 'retired', repairedOn: '2027-04-09' }, '2027-04-10')).toBe(false);
});

// 5 of setting up, 6 of cleaning, 12 of changing over.
test('a set-up takes what there is to do', () => {
  const casting = { prepMinutes: 5, cleanMinutes: 6 };
  expect(setUpMinutes(casting, 12, true)).toBe(23);
  expect(setUpMinutes(casting, 12, false)).toBe(17);
  expect(setUpMinutes(casting, 0, false)).toBe(5);
});

test('a coat takes its time, and that of cleaning before it', () => {
  expect([coatMinutes(10, { cleanMinutes: 6 }, true), coatMinutes(10, { cleanMinutes: 6 }, false)]).toEqual([16, 10]);
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

  test('coated is clean and bare, set for what it was, and dries', () => {
    const mould: Mould = { ...ready!, condition: 'dirty', prepped: true, turnsSinceOil: 8 };
    const patch = { condition: 'ready', prepped: false, setFor: mould.setFor, turnsSinceOil: 0 };
    expect(afterCoat(mould, '2027-04-10T09:00:00+01:00')).toEqual({ ...patch, dryFrom: '2027-04-10T09:00:00+01:00' });
  });

  test('set up or poured is dry', () => {
    const drying: Mould = { ...ready!, dryFrom: '2027-04-10T09:00:00+01:00' };
    expect(afterSetUp(drying, 'kerb', false).dryFrom).toBeNull();
    expect(afterPour(drying, 'kerb', false).dryFrom).toBeNull();
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
