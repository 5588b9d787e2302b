import { describe, expect, test } from 'vitest';
import { dependsText, dueOddsText, oddsText, restsOnText, spareText } from '../../../views/orders/odds-text.ts';

const TODAY = '2027-05-03';
const day = (times: number, of: number, on: string | null) => ({ times, of, on });

describe('odds in words', () => {
  test('each day once, with the best odds it has', () => {
    const days = [
      day(1, 2, '2027-05-22'),
      day(8, 10, '2027-05-22'),
      day(9, 10, '2027-05-29'),
      day(19, 20, '2027-05-29'),
    ];
    expect(oddsText({ days }, TODAY)).toBe('8 in 10 by Sat 22 May and 19 in 20 by Sat 29 May.');
    expect(oddsText({ days: [...days.slice(0, 2), day(9, 10, null), day(19, 20, null)] }, TODAY)).toBe(
      '8 in 10 by Sat 22 May.',
    );
    expect(oddsText({ days: [day(1, 2, null)] }, TODAY)).toBe('Less than 1 in 2 within the days planned ahead.');
  });

  test.each([
    [280, 'Sat 22 May, its date, is kept 7 in 10 times.'],
    [398, 'Sat 22 May, its date, is kept almost always.'],
    [4, 'Sat 22 May, its date, is kept hardly ever.'],
    [385, 'Sat 22 May, its date, is kept 19 in 20 times.'],
  ])('a date kept %i of 400 times', (by, text) => expect(dueOddsText({ on: '2027-05-22', by }, 400, TODAY)).toBe(text));

  test('what it depends on', () => {
    expect(dependsText({ kind: 'pieces', what: '1200 no. 2' })).toBe('It depends most on rejects of 1200 no. 2.');
    expect(dependsText({ kind: 'sessions', what: '' })).toBe('It depends most on days of work that are lost.');
    expect(dependsText({ kind: 'deliveries', what: 'Grocer' })).toBe(
      'It depends most on deliveries that come late from Grocer.',
    );
    expect(dependsText(null)).toMatch(/^Nothing/);
  });

  test('what it rests on', () => {
    const restsOn = { pieces: 288, sessions: 1, deliveries: 0 };
    expect(restsOnText({ restsOn, isEnough: true })).toBe(
      'Rests on 288 pieces, 1 day with work and 0 deliveries on record.',
    );
    expect(restsOnText({ restsOn, isEnough: false })).toMatch(/on record, and on guesses: that is little yet\.$/);
    expect(restsOnText({ restsOn: { pieces: 0, sessions: 0, deliveries: 0 }, isEnough: false })).toBe(
      'Rests on guesses: nothing is on record yet.',
    );
  });

  test('a spare piece', () => {
    const spare = { casting: 'a', name: 'Panel 900', count: 12, allGood: 0.54, poured: 13, enoughGood: 0.865 };
    expect(spareText(spare)).toBe(
      '12 of Panel 900 are still to come out: all good 1 in 2. With 13 poured, enough are good 9 in 10.',
    );
  });
});
