import { describe, expect, test } from 'vitest';
import type { BuyingModel, BuyLineFacts, StockFacts, TripFacts } from '../../../src/usecases/buying/buying-facts.ts';
import {
  buyingAnswer,
  buyingNote,
  expectedText,
  goodsText,
  purposeText,
  stockText,
} from '../../../views/buying/buying-text.ts';

const TODAY = '2027-04-05';
const bags: StockFacts = {
  ...{
    key: '0',
    material: 'mortar',
    name: 'Fast-setting mortar',
    unit: 'bag',
    minimum: 0,
    canBeBought: true,
    notBefore: null,
  },
  ...{
    inYard: 9,
    asTyped: null,
    offcuts: null,
    book: '9',
    spokenFor: 6,
    spare: 3,
    past: 0,
    goesOff: 0,
    coming: [],
    note: null,
    bags: [],
    bagsToCount: [],
    keeping: null,
    ahead: { start: 9, levels: [], shortDay: null },
  },
};

const rests = (...lengths: [string, number][]) => ({
  called: 'Offcuts' as const,
  ...{ lengths: lengths.map(([length, count]) => ({ length, count })), field: '', example: '' },
});

describe('stock as a sentence', () => {
  test.each<[Partial<StockFacts>, string]>([
    [
      { coming: [{ quantity: 6, on: '2027-04-09' }], minimum: 2 },
      '9 bags in the yard, 6 spoken for, 3 spare; 6 more on Fri 9 Apr. Always keep 2.',
    ],
    [{ spokenFor: 9, spare: 0 }, '9 bags in the yard, all spoken for.'],
    [{ spokenFor: 0, spare: 9 }, '9 bags in the yard, none spoken for.'],
    [{ spare: 0, past: 3 }, '9 bags in the yard, 6 spoken for, 0 spare, 3 past their date.'],
    [
      { spare: 1, past: 1, goesOff: 1 },
      '9 bags in the yard, 6 spoken for, 1 spare, 1 past its date, 1 going off before it is needed.',
    ],
    [{ inYard: 1, spokenFor: 0, spare: 1 }, '1 bag in the yard, none spoken for.'],
    [
      { inYard: 0, spokenFor: 0, spare: 0, coming: [{ quantity: 4, on: '2027-04-09' }] },
      'None in the yard; 4 on Fri 9 Apr.',
    ],
    [
      { coming: [{ quantity: 4, on: '2027-04-02' }] },
      '9 bags in the yard, 6 spoken for, 3 spare; 4 more due since Fri 2 Apr.',
    ],
    [{ unit: 'g', inYard: 700, spokenFor: 684.4, spare: 15.6 }, '700 g in the yard, 684.4 spoken for, 15.6 spare.'],
    [{ unit: 'each', inYard: 30, spokenFor: 22, spare: 8 }, '30 in the yard, 22 spoken for, 8 spare.'],
    [{ unit: 'stick', inYard: 2, spokenFor: 2, spare: 0, offcuts: rests() }, '2 sticks in the yard, all spoken for.'],
    [
      { unit: 'stick', inYard: 2, spokenFor: 2, spare: 0, offcuts: rests(['2232 mm', 1], ['1400 mm', 2]) },
      '2 whole in the yard, all spoken for. Offcuts: 2232 mm and 2 × 1400 mm.',
    ],
    [{ unit: 'stick', inYard: 0, offcuts: rests(['90 mm', 1]) }, 'None whole in the yard. Offcuts: 90 mm.'],
    [{ unit: 'oz', inYard: 24.69, asTyped: '700 g' }, '700 g in the yard, 6 spoken for, 3 spare.'],
    [{ unit: 'fl oz', inYard: 24.691, spokenFor: 0 }, '24.69 fl oz in the yard, none spoken for.'],
    [{ canBeBought: false }, "9 bags in the yard, 6 spoken for, 3 spare. Can't be bought."],
  ])('%o', (changes, sentence) => {
    expect(stockText({ ...bags, ...changes }, TODAY)).toBe(sentence);
  });
});

describe('whom goods are for', () => {
  test.each([
    [['School garden'], null, 'For School garden'],
    [['School garden', 'Ann', null], null, 'For School garden, Ann and stock'],
    [['Terrace wall, Quinn', 'Ann'], null, 'For Terrace wall, Quinn; Ann'],
    [[], 2, 'To have 2 bags in the yard again'],
    [['Ann'], 2, 'For Ann, and to have 2 bags in the yard again'],
    [[], null, 'Rounded up to whole packs'],
    [
      ['Ann', 'Bo', 'Cy', 'Di', 'Ed', 'Flo', 'Gil', 'Hal', 'Ida', 'Jo', null],
      null,
      'For Ann, Bo, Cy, Di, Ed, Flo, Gil, Hal and 3 more',
    ],
    [
      ['Wall, Quinn', 'Bo', 'Cy', 'Di', 'Ed', 'Flo', 'Gil', 'Hal', 'Ida'],
      null,
      'For Wall, Quinn; Bo; Cy; Di; Ed; Flo; Gil; Hal; 1 more',
    ],
  ])('%o and %o to keep', (customers, keep, text) => {
    expect(purposeText({ customers, keep }, 'bag')).toBe(text);
  });
});

const line = (orderBy: string, quantity = 4): BuyLineFacts => ({
  ...{
    key: orderBy,
    material: 'mortar',
    name: 'Fast-setting mortar',
    unit: 'bag',
    quantity,
    pack: 1,
    packIsOne: true,
    orderBy,
    on: orderBy,
  },
  ...{
    field: String(quantity),
    was: quantity,
    price: null,
    for: { customers: [], keep: null },
    hasNothingInHand: false,
    ...{ daysLate: 0, missedOn: null, closedOn: null, beside: null, isAskedIfLate: false, ifLate: null },
    unused: null,
  },
});
const TRIP: Omit<TripFacts, 'lines'> = {
  ...{ key: 'trip-0', name: 'Merchant', day: TODAY, fetched: true, price: 0, deliveryPrice: 0, shortOfMinimum: 0 },
  ...{ weight: null, tooHeavy: false, neverThere: false },
};
const model = (weeks: Record<string, BuyLineFacts[]>): BuyingModel => ({
  ...{ yardName: 'Yard', today: TODAY, currency: 'EUR', thisWeek: TODAY, onTheWay: [], stock: [], materials: [] },
  daysAhead: 42,
  weeks: Object.entries(weeks).map(([week, lines]) => ({ week, trips: [{ ...TRIP, lines }] })),
});

describe('the first line', () => {
  test.each<[Record<string, BuyLineFacts[]>, string, string]>([
    [{}, 'Nothing has to be bought for what is planned.', 'What is in the yard and on its way will do.'],
    [
      { [TODAY]: [line('2027-04-07')] },
      'Order 4 bags of Fast-setting mortar by Wed 7 Apr.',
      'One thing to order this week.',
    ],
    [{ [TODAY]: [line(TODAY, 1)] }, 'Order 1 bag of Fast-setting mortar today.', 'One thing to order this week.'],
    [
      { [TODAY]: [line('2027-04-07'), line('2027-04-07'), line('2027-04-08')], '2027-04-12': [line('2027-04-12')] },
      'Order 4 bags of Fast-setting mortar by Wed 7 Apr, and one more thing.',
      '3 things to order this week, 1 in the weeks after.',
    ],
    [
      { '2027-04-12': [line('2027-04-14')] },
      'Nothing to order this week. Next: 4 bags of Fast-setting mortar by Wed 14 Apr.',
      'One thing to order in the weeks after.',
    ],
  ])('%#', (weeks, answer, note) => {
    expect(buyingAnswer(model(weeks))).toBe(answer);
    expect(buyingNote(model(weeks))).toBe(note);
  });
});

test('goods and days', () => {
  expect(goodsText({ quantity: 25, unit: 'each', name: 'Corner clip' })).toBe('25 × Corner clip');
  expect(expectedText({ on: '2027-04-09' }, TODAY)).toBe('Expected Fri 9 Apr');
  expect(expectedText({ on: TODAY }, TODAY)).toBe('Expected today');
  expect(expectedText({ on: '2027-04-02' }, TODAY)).toBe('Was expected Fri 2 Apr');
});
