import { describe, expect, test } from 'vitest';
import { Moves } from '../../../views/parts/moves.tsx';
import { effectText, type MovedPromise, moveMessage, moveText, standingText } from '../../../views/words/moved-text.ts';

const today = '2027-04-05';
const moved: MovedPromise = {
  order: '27-014',
  customer: 'School garden',
  from: '2027-05-08',
  to: '2027-05-15',
  daysLate: 7,
  isWanted: false,
  reason: null,
  kind: 'promise',
  promisedOn: '2027-05-08',
};

describe('the message to a customer whose date moved', () => {
  test('says what was said before and what today’s plan says', () => {
    expect(moveMessage(moved, today)).toBe(
      "Hello School garden. We had said Sat 8 May. By today's plan your order 27-014 will be ready Sat 15 May.",
    );
  });

  test('says by how much when no date had been given', () => {
    expect(moveMessage({ ...moved, promisedOn: null }, today)).toBe(
      "Hello School garden. By today's plan your order 27-014 will be ready Sat 15 May, 7 days later than the plan was before.",
    );
  });

  test('gives no date when there is none, and no name when there is none', () => {
    const text = moveMessage({ ...moved, customer: null, to: null }, today);
    expect(text).toBe(
      "We had said Sat 8 May. By today's plan we can't give a date for your order 27-014 just now. We will write as soon as we can.",
    );
  });

  test('never promises more than today’s plan', () => {
    for (const to of ['2027-05-01', '2027-05-15', null])
      for (const promisedOn of ['2027-05-08', null])
        expect(moveMessage({ ...moved, to, promisedOn }, today)).toContain("By today's plan");
  });
});

test.each([
  ['2027-05-08', '2027-05-15', '7 days later'],
  ['2027-05-08', '2027-05-07', '1 day sooner'],
  ['2027-05-08', '2034-05-30', '7 years later'],
  ['2027-05-08', null, "can't be made now"],
  [null, '2027-05-08', 'can be made again'],
])('from %s to %s is %s', (from, to, text) => expect(moveText(from, to)).toBe(text));

test('a date that was only asked for is called so, and no promise', () => {
  const wanted: MovedPromise = { ...moved, isWanted: true, promisedOn: null, daysLate: 30 };
  expect(standingText(moved)).toBe('; 7 days after the date given');
  expect(standingText(wanted)).toBe('; 4 weeks after the date wanted');
  expect(effectText([wanted])).toBe('This moves one date wanted.');
  expect(effectText([moved, wanted, wanted])).toBe('This moves one promise and two dates wanted.');
});

test('moves of the plan alone are counted, those of a date given are said aloud', () => {
  const planned: MovedPromise = { ...moved, order: '27-015', customer: 'Pat Dunne', daysLate: 0, kind: 'planned' };
  const said = String(Moves({ moved: [moved, planned], today }));
  const counted = said.indexOf('The day by plan of one order moved as well.');
  expect(said.indexOf('School garden')).toBeLessThan(counted);
  expect(said.indexOf('Pat Dunne')).toBeGreaterThan(counted);
  expect(String(Moves({ moved: [planned, planned], today }))).toContain('of two orders moved, and no date given did.');
  expect(String(Moves({ moved: [], today }))).toContain('No date moved.');
});

test('nothing is written to who was promised a day that still holds', () => {
  const planned: MovedPromise = { ...moved, to: '2027-05-07', daysLate: 0, kind: 'planned' };
  const offers = (one: MovedPromise) => String(Moves({ moved: [one], today })).includes('Message to School garden');
  expect([planned, { ...planned, promisedOn: null }, moved].map(offers)).toEqual([false, true, true]);
});
