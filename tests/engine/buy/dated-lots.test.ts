import { describe, expect, it } from 'vitest';
import { dayNumber } from '../../../shared/time.ts';
import { type DatedLot, lotsOnHand, takeFromLots, usableOn } from '../../../src/engine/buy/dated-lots.ts';

const lot = (quantity: number, useBy: string | null, openedOn: string | null = null): DatedLot => ({
  quantity,
  useBy: useBy === null ? null : dayNumber(useBy),
  openedOn: openedOn === null ? null : dayNumber(openedOn),
});
const day = dayNumber('2027-04-04');
const bagwise = { opensBy: 1, openedDays: 14 };

describe('bags by their dates', () => {
  it('takes what is opened first, then what has no date, then what has to be used soonest', () => {
    const open = lot(0.5, '2027-09-01', '2027-04-01');
    const [none, soon, late] = [lot(1, null), lot(2, '2027-04-10'), lot(3, '2027-04-20')];
    const { taken, lots } = takeFromLots([late, soon, none, open], 4, day, bagwise);
    expect(taken).toEqual([
      { lot: open, quantity: 0.5 },
      { lot: none, quantity: 1 },
      { lot: soon, quantity: 2 },
      { lot: late, quantity: 0.5 },
    ]);
    // Half a bag of the 20th had to be opened for it.
    expect(lots).toEqual([lot(0.5, '2027-04-20', '2027-04-04'), lot(2, '2027-04-20')]);
  });

  it('never takes what is past its date, and says what is missing', () => {
    const past = lot(3, '2027-04-03');
    const { taken, lots, short } = takeFromLots([past, lot(1, '2027-04-04')], 2.5, day, {});
    expect({ taken: taken.length, short, lots }).toEqual({ taken: 1, short: 1.5, lots: [past] });
  });

  it('keeps an opened bag for its own days, and no longer than its date', () => {
    const opened = lot(0.5, '2027-09-01', '2027-03-21');
    expect(usableOn([opened], day, bagwise)).toBe(0.5);
    expect(usableOn([opened], day + 1, bagwise)).toBe(0);
    expect(usableOn([lot(0.5, '2027-04-03', '2027-04-01')], day, bagwise)).toBe(0);
  });

  it('opens no more of a lot than there is of it', () => {
    const { lots } = takeFromLots([lot(0.7, '2027-04-10')], 0.25, day, bagwise);
    expect(lots.map(({ quantity, openedOn }) => ({ quantity: Number(quantity.toFixed(6)), openedOn }))).toEqual([
      { quantity: 0.45, openedOn: day },
    ]);
  });

  it('uses up the smaller of two of one date, so that no second bag is opened for it', () => {
    const { lots } = takeFromLots([lot(2, '2027-04-10'), lot(0.5, '2027-04-10')], 0.5, day, bagwise);
    expect(lots).toEqual([lot(2, '2027-04-10')]);
  });

  it('gives no date to what no lot accounts for', () => {
    const lots = lotsOnHand({ onHand: 9, lots: [{ quantity: 4, useBy: '2027-04-10' }] }, () => day);
    expect(lots).toEqual([lot(5, null), lot(4, '2027-04-10')]);
  });
});
