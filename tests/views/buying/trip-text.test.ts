import { describe, expect, test } from 'vitest';
import type { BuyLineFacts, TripFacts } from '../../../src/usecases/buying/buying-facts.ts';
import { ifLateText } from '../../../views/buying/if-late.tsx';
import { closedText, lineWarning, tripListText, tripNote, tripWhenText } from '../../../views/buying/trip-text.ts';

const TODAY = '2027-04-05';
const line = {
  name: 'Fast-setting mortar',
  unit: 'bag',
  quantity: 4,
  price: 80,
  daysLate: 0,
  missedOn: null,
  closedOn: null,
};
const trip = {
  ...{ key: 'trip-0', name: 'Merchant', day: TODAY, fetched: true, price: 160, deliveryPrice: 0, shortOfMinimum: 0 },
  ...{ weight: '100 kg', tooHeavy: false, neverThere: false },
  lines: [line, line] as unknown as BuyLineFacts[],
} satisfies TripFacts;

describe('a trip', () => {
  test('says by when, and whether things are fetched', () => {
    expect(tripWhenText(trip, TODAY)).toBe('fetch today');
    expect(tripWhenText({ day: '2027-04-09', fetched: false }, TODAY)).toBe('order by Fri 9 Apr');
  });

  test('says what it comes to, and what is wrong with it', () => {
    expect(tripNote(trip, 'EUR')).toEqual(['€160.00 in all; 100 kg.']);
    expect(tripNote({ ...trip, deliveryPrice: 15, price: 175 }, 'EUR')[0]).toBe(
      '€175.00 in all, with €15.00 for the way; 100 kg.',
    );
    const wrong = { ...trip, price: 0, weight: null, shortOfMinimum: 20, tooHeavy: true };
    expect(tripNote(wrong, 'EUR')).toEqual([
      '€20.00 short of the least order.',
      'That is more than is carried at once.',
    ]);
  });

  test('has a list to take along', () => {
    expect(tripListText(trip, TODAY)).toBe(
      'Merchant, fetch today\n4 bags of Fast-setting mortar\n4 bags of Fast-setting mortar',
    );
  });
});

describe('a line of it', () => {
  test('says where it comes too late, and which day was missed', () => {
    expect(lineWarning(line as unknown as BuyLineFacts, TODAY)).toBeNull();
    expect(lineWarning({ ...line, daysLate: 2, missedOn: '2027-04-03' } as unknown as BuyLineFacts, TODAY)).toBe(
      'It comes 2 days late. It had to be ordered by Sat 3 Apr.',
    );
  });

  test('says where the supplier is closed on its day', () => {
    expect(closedText({ closedOn: null }, TODAY)).toBe('');
    expect(closedText({ closedOn: '2027-04-11' }, TODAY)).toBe(' Closed Sun 11 Apr.');
  });

  test('says what slips where it is not ordered by its day', () => {
    const slip = { order: '27-001', customer: 'School garden', from: '2027-05-08', to: '2027-05-15' };
    expect(ifLateText([slip], TODAY, TODAY)).toBe('Today, or School garden slips from Sat 8 May to Sat 15 May.');
    const gone = { order: '27-002', customer: null, from: '2027-05-08', to: null };
    expect(ifLateText([slip, gone, gone, gone], '2027-04-09', TODAY)).toBe(
      "By Fri 9 Apr, or School garden slips from Sat 8 May to Sat 15 May; order 27-002 can't be made; order 27-002 can't be made; and 1 more.",
    );
    expect(ifLateText([], TODAY, TODAY)).toBe('If it is ordered a day later, no date moves.');
  });
});
