import { describe, expect, it } from 'vitest';
import { dayNumber, minuteOf } from '../../../shared/time.ts';
import { type BoughtMaterial, buysOf } from '../../../src/engine/buy/buys.ts';
import type { MaterialUse } from '../../../src/engine/buy/material-flow.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';

const dublin = calendarOf('Europe/Dublin');
const NOW = minuteOf('2027-04-05T07:30:00+01:00');
const mortar: BoughtMaterial = { id: 'mortar', onHand: 0, pack: 1, leadDays: 2, minimum: 0 };
const on = (date: string, quantity: number): MaterialUse => ({ at: minuteOf(`${date}T09:00:00+01:00`), quantity });
const bought = (
  material: Partial<BoughtMaterial>,
  uses: MaterialUse[],
  { due = [], inHand = 0 }: { due?: { day: number; quantity: number }[]; inHand?: number } = {},
) =>
  buysOf({ ...mortar, ...material }, uses, due, NOW, dublin, { daysInHand: inHand }).map(
    (x) => `${x.quantity} for ${x.arrivesOn}`,
  );
const SATURDAYS = ['2027-04-10', '2027-04-17', '2027-04-24', '2027-05-01'];

describe('buying what goes past its date', () => {
  // Half a bag a Saturday: two bags where an opened one keeps, four where it does not, two where it keeps a week.
  it.each([
    [undefined, ['1 for 2027-04-10', '1 for 2027-04-24']],
    [3, SATURDAYS.map((date) => `1 for ${date}`)],
    [7, ['1 for 2027-04-10', '1 for 2027-04-24']],
  ])('half a bag on four Saturdays, an opened one keeping %s days', (openedDays, expected) => {
    const uses = SATURDAYS.map((date) => on(date, 0.5));
    expect(bought({ openedDays }, uses)).toEqual(expected);
  });

  it('counts no bag past its date', () => {
    const lots = [{ quantity: 2, useBy: '2027-04-16' }];
    expect(bought({ onHand: 2, lots }, [on('2027-04-10', 1), on('2027-04-17', 1)])).toEqual(['1 for 2027-04-17']);
  });

  // A pack of ten keeps ten days: what is left of it on the 24th is past its date.
  it('buys again what kept too short, and what is on its way keeps as long', () => {
    const uses = [on('2027-04-10', 4), on('2027-04-20', 4), on('2027-04-24', 1)];
    expect(bought({ pack: 10, shelfLifeDays: 10 }, uses)).toEqual(['10 for 2027-04-10', '10 for 2027-04-24']);
    const due = [{ day: dayNumber('2027-04-12'), quantity: 9 }];
    expect(bought({ shelfLifeDays: 10 }, uses, { due })).toEqual(['4 for 2027-04-10', '1 for 2027-04-24']);
  });

  it('asks for no buy because the stock that is always kept goes past its date, until something is used', () => {
    const lots = [{ quantity: 2, useBy: '2027-04-20' }];
    const kept = { onHand: 2, minimum: 2, lots, shelfLifeDays: 200 };
    expect(bought(kept, [])).toEqual([]);
    expect(bought(kept, [on('2027-05-01', 1)])).toEqual(['3 for 2027-05-01']);
  });

  it('has fewer days in hand for a delivery than it keeps', () => {
    expect(bought({ shelfLifeDays: 3 }, [on('2027-05-01', 1)], { inHand: 10 })).toEqual(['1 for 2027-04-29']);
    expect(bought({ shelfLifeDays: 30 }, [on('2027-05-01', 1)], { inHand: 10 })).toEqual(['1 for 2027-04-21']);
  });
});
