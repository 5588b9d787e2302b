import { describe, expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import { type Arrival, keepingOf } from '../../../src/usecases/buying/keeping-facts.ts';
import { smallYard } from '../../support/small-yard.ts';

const TODAY = '2027-04-20';
const yard = smallYard();
const mortar = { ...yard.materials[0]!, onHand: 10, leadDays: 3, minimum: 0, shelfLifeDays: 90 };
const use = (date: string, quantity: number) => ({ at: minuteOf(`${date}T09:00:00+01:00`), quantity, orders: ['A'] });
const came = (arrivedOn: string, quantity: number): Arrival => ({ arrivedOn, quantity });
const asked = { yard, today: TODAY, uses: [], arrivals: [], supplies: [] };
const keeping = (facts: Partial<Parameters<typeof keepingOf>[1]>, material: Partial<typeof mortar> = {}) =>
  keepingOf({ ...mortar, ...material }, { ...asked, ...facts });

describe('what is in the yard', () => {
  test('is past its days by the day on which it came; the last day itself is not past', () => {
    // 12 January and 90 days are 12 April, 20 January and 90 days are 20 April.
    const arrivals = [came('2027-01-12', 8), came('2027-01-20', 5), came('2027-04-02', 2)];
    expect(keeping({ arrivals })).toMatchObject({
      days: 90,
      past: [{ quantity: 3, cameOn: '2027-01-12' }],
      late: [],
      undated: 0,
    });
  });

  test('is used too late by the plan where its turn comes after its last day', () => {
    const arrivals = [came('2027-02-01', 6)];
    // Four came nobody knows when, and go first; of the six that keep until 2 May, two are used by then.
    const uses = [use('2027-04-24', 6), use('2027-05-08', 3)];
    expect(keeping({ arrivals, uses })).toMatchObject({
      late: [{ quantity: 3, until: '2027-05-02' }],
      undated: 4,
    });
  });

  test('that does not go off is not asked about', () => {
    expect(keepingOf(yard.materials[0]!, asked)).toBeNull();
  });
});

describe('what is to be bought', () => {
  const supplies = [{ quantity: 12, on: '2027-04-24' }];

  test('and has no use while it keeps is told, less what is always kept', () => {
    const uses = [use('2027-04-26', 4)];
    // 24 April and 50 days are 13 June; the plan reaches 19 June.
    const facts = keeping({ uses, supplies }, { onHand: 0, minimum: 2, shelfLifeDays: 50 });
    expect(facts?.unused).toEqual([{ quantity: 6, until: '2027-06-13' }]);
  });

  test('and keeps longer than the plan reaches may have uses nobody has ordered yet', () => {
    expect(keeping({ supplies }, { onHand: 0 })?.unused).toEqual([null]);
  });

  test('and is used after its last day is told even so', () => {
    const uses = [use('2027-04-26', 10), use('2027-06-14', 2)];
    const facts = keeping({ uses, supplies }, { onHand: 0, shelfLifeDays: 50 });
    expect(facts?.unused).toEqual([{ quantity: 2, until: '2027-06-13' }]);
  });

  test('all in time says nothing; goods that are overdue count from today', () => {
    const uses = [use('2027-06-13', 12)];
    expect(keeping({ uses, supplies }, { onHand: 0, shelfLifeDays: 50 })?.unused).toEqual([null]);
    const overdue = [{ quantity: 12, on: '2027-03-01' }];
    const facts = keeping({ uses, supplies: overdue }, { onHand: 0, shelfLifeDays: 50 });
    expect(facts?.unused).toEqual([{ quantity: 12, until: '2027-06-09' }]);
  });
});
