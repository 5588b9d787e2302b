import { describe, expect, test } from 'vitest';
import type { OrderFacts } from '../../../views/orders/order-facts.ts';
import { pastAnswer } from '../../../views/orders/past-orders-page.tsx';
import { contentsText, isLate, readyMessage, standingText } from '../../../views/words/order-text.ts';

const today = '2027-04-05';
const order: OrderFacts = {
  id: '27-014',
  customer: 'School garden',
  phone: null,
  customerNote: null,
  note: null,
  address: null,
  contents: [
    { what: 'kit:planter', name: 'Planter 1200 x 600', quantity: 2, unit: '' },
    { what: 'material:mortar', name: 'Fast-setting mortar', quantity: 1, unit: 'bag' },
  ],
  status: 'open',
  wantedOn: '2027-05-01',
  notBefore: null,
  promisedOn: '2027-05-08',
  heldUntil: null,
  handedOverOn: null,
  partOf: null,
  slip: 'not',
  readyOn: '2027-05-06',
  packings: [],
  packedMinutes: null,
  inYard: false,
  packed: false,
  packedOn: null,
  reason: null,
};

describe('an order in a sentence', () => {
  test.each([
    [{}, 'promised Sat 8 May, 2 days to spare'],
    [{ promisedOn: null }, 'wanted Sat 1 May, 5 days late'],
    [{ heldUntil: '2027-04-10' }, 'Sat 8 May held until Sat 10 Apr, 2 days to spare'],
    [{ promisedOn: null, wantedOn: null }, 'no date given'],
    [
      { readyOn: null, reason: 'no usable mould makes panel 1200' },
      "can't be made yet, because no usable mould makes panel 1200",
    ],
  ])('%j', (changes, text) => expect(standingText({ ...order, ...changes }, today)).toBe(text));

  test('is ready and not handed over where that is all that is left to do after its date', () => {
    const there = { ...order, inYard: true, readyOn: '2027-05-15' };
    expect(standingText(there, today)).toBe('promised Sat 8 May, ready and not handed over');
    expect(standingText({ ...there, readyOn: '2027-05-08' }, today)).toBe('promised Sat 8 May, on the day');
    expect(standingText({ ...there, packed: true, packedOn: '2027-05-08' }, today)).toBe(
      'promised Sat 8 May, ready and not handed over',
    );
    expect(standingText({ ...there, packed: true, packedOn: '2027-05-12' }, today)).toBe(
      'promised Sat 8 May, packed Wed 12 May, 4 days late, and not handed over',
    );
  });

  test('is late by the date promised before the date wanted', () => {
    expect(isLate(order)).toBe(false);
    expect(isLate({ ...order, promisedOn: null })).toBe(true);
    expect(isLate({ ...order, promisedOn: null, wantedOn: null })).toBe(false);
  });

  test('names everything it is for', () => {
    expect(contentsText(order.contents)).toBe('2 × Planter 1200 x 600; 1 bag Fast-setting mortar');
  });
});

describe('the message of a date that is held', () => {
  const held = { ...order, heldUntil: '2027-04-09' };
  const hold =
    'Hello School garden. We hold Sat 8 May for your order 27-014 (2 × Planter 1200 x 600; 1 bag Fast-setting mortar) until the end of Fri 9 Apr. After that the date is free again.';

  test('says which date, of what, and when it lapses', () => {
    expect(readyMessage(held, today)).toBe(`${hold} By today's plan it will be ready by then.`);
  });

  test('is honest where the plan is later, or has no date', () => {
    expect(readyMessage({ ...held, readyOn: '2027-05-22' }, today)).toBe(
      `${hold} By today's plan it will be ready Sat 22 May only, 14 days after the date we hold.`,
    );
    expect(readyMessage({ ...held, readyOn: null }, today)).toBe(
      `${hold} By today's plan we can't give a date for it yet.`,
    );
  });
});

test('the message of a promise that is broken says by how much', () => {
  expect(readyMessage({ ...order, readyOn: '2027-05-09' }, today)).toBe(
    "Hello School garden. By today's plan your order 27-014 will be ready Sun 9 May. That is 1 day after Sat 8 May, the day we had said.",
  );
});

test('the message of a promise names the day promised, until all of it is in the yard', () => {
  expect(readyMessage(order, today)).toBe(
    "Hello School garden. By today's plan your order 27-014 will be ready by Sat 8 May, the day we said.",
  );
  for (const readyOn of ['2027-05-06', '2027-05-15'])
    expect(readyMessage({ ...order, inYard: true, readyOn }, today)).toBe(
      `Hello School garden. Your order 27-014 is ready. By today's plan it can be handed over ${readyOn === '2027-05-06' ? 'Thu 6 May' : 'Sat 15 May'}.`,
    );
});

test('the message promises no more than today’s plan', () => {
  expect(readyMessage({ ...order, promisedOn: null }, today)).toBe(
    "Hello School garden. By today's plan your order 27-014 will be ready Thu 6 May.",
  );
  expect(readyMessage({ ...order, readyOn: null, customer: null }, today)).toBe(
    "By today's plan we can't give a date for your order 27-014 yet.",
  );
});

test.each([
  [0, 'No order is past yet.'],
  [1, 'One order is past.'],
  [2, 'Two orders are past: handed over, cancelled, or held no longer.'],
])('%i past orders are answered "%s"', (count, answer) => expect(pastAnswer(count)).toBe(answer));
