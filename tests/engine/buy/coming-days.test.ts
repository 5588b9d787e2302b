import { describe, expect, it } from 'vitest';
import { dateOfDay, dayNumber } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { comingDaysOf } from '../../../src/engine/buy/coming-days.ts';
import { smallYard } from '../../support/small-yard.ts';

type Supplier = NonNullable<YardFile['suppliers']>[number];
type Material = YardFile['materials'][number];

const rule = (days: string) => ({ rule: `FREQ=WEEKLY;BYDAY=${days}`, from: '2027-01-01' });

/** The days of mortar in a yard of which it is Thursday 8 April 2027, as dates. */
const daysOf = (shop: Omit<Supplier, 'name' | 'closed'> & { closed?: string[] }, mortar: Partial<Material> = {}) => {
  const yard = smallYard();
  const material = { ...yard.materials[0]!, leadDays: 2, ...mortar, supplier: 'Shop' };
  const supplied = { ...yard, suppliers: [{ name: 'Shop', closed: [], ...shop }] };
  const now = { ...supplied.yard, now: '2027-04-08T07:00:00+01:00', horizonDays: 30 };
  const days = comingDaysOf({ ...supplied, yard: now }, material);
  if (days === null) return null;
  const upTo = (date: string, inHand = 0) => dateOfDay(days.countingBy(dayNumber(date), inHand));
  return {
    soonest: dateOfDay(days.soonest),
    upTo,
    orderedFor: (date: string) => dateOfDay(days.orderedFor(dayNumber(date))),
    apart: days.apart.map(({ after, until }) => [dateOfDay(after), until && dateOfDay(until)]),
  };
};

describe('the days on which a material can come', () => {
  it('are those of its supplier, ordered on a day on which that is open', () => {
    const days = daysOf({ opens: rule('MO,TU,WE,TH,FR') })!;
    // Ordered on Thursday it would be there on Saturday, on which nothing comes.
    expect(days.soonest).toBe('2027-04-12');
    expect(days.orderedFor('2027-04-12')).toBe('2027-04-09');
    expect(days.upTo('2027-04-18')).toBe('2027-04-16');
    expect(days.orderedFor('2027-04-16')).toBe('2027-04-14');
  });

  it('are days of its own where it brings things on others, and leave out those on which it is closed', () => {
    const brings = daysOf({ opens: rule('MO,TU,WE,TH,FR'), delivers: rule('TU,FR'), closed: ['2027-04-13'] })!;
    expect([brings.soonest, brings.orderedFor(brings.soonest)]).toEqual(['2027-04-16', '2027-04-14']);
    expect(brings.upTo('2027-04-21')).toBe('2027-04-20');
    expect(brings.orderedFor('2027-04-20')).toBe('2027-04-16');
  });

  it('are open days where things are fetched', () => {
    const fetched = { fetched: true, delivers: rule('WE'), opens: rule('SA') };
    expect(daysOf(fetched, { leadDays: 0 })!.soonest).toBe('2027-04-10');
    expect(daysOf(fetched, { leadDays: 1 })!.soonest).toBe('2027-04-17');
  });

  it('are none where the shop is shut for as long as the plan goes', () => {
    expect(daysOf({ opens: { rule: 'FREQ=WEEKLY;BYDAY=MO;UNTIL=20270405', from: '2027-01-01' } })).toBeNull();
  });

  // Brought on Fridays from the 16th on; the plan goes to Saturday 8 May.
  const weekly = { opens: rule('WE'), delivers: rule('FR'), closed: ['2027-04-30'] };

  it('leave times in between for what keeps for less long than the shop is shut', () => {
    expect(daysOf(weekly, { shelfLifeDays: 14 })!.apart).toEqual([]);
    expect(daysOf(weekly, { shelfLifeDays: 7 })!.apart).toEqual([['2027-04-30', '2027-05-07']]);
    expect(daysOf(weekly, { shelfLifeDays: 6 })).toMatchObject({
      soonest: '2027-04-16',
      apart: [
        ['2027-04-22', '2027-04-23'],
        ['2027-04-29', '2027-05-07'],
      ],
    });
  });

  it('have no more in hand than what came before them still lasts', () => {
    // What came on the 16th is good until the 25th: what comes on the 23rd may be two days late.
    const { upTo } = daysOf(weekly, { shelfLifeDays: 9 })!;
    expect(['2027-04-24', '2027-04-25', '2027-04-26'].map((date) => upTo(date, 3))).toEqual([
      ...['2027-04-16', '2027-04-23', '2027-04-23'],
    ]);
    expect(upTo('2027-04-23', 0)).toBe('2027-04-23');
  });
});
