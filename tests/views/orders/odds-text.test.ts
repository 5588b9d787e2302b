import { describe, expect, test } from 'vitest';
import {
  dependsText,
  dueOddsText,
  howSureText,
  oddsText,
  othersText,
  restsOnText,
  spareText,
} from '../../../views/orders/odds-text.ts';

const TODAY = '2027-05-03';
const NOTHING = { pieces: 0, sessions: 0, deliveries: 0 };
const kept = (on: string, by: number) => ({ on, by });

describe('odds in words', () => {
  test('each day once, never with better odds than it has', () => {
    const days = [kept('2027-05-22', 311), kept('2027-05-29', 399)];
    // 311 of 400 are 0.78: more than 1 in 2, and not 8 in 10.
    expect(oddsText({ days, draws: 400 }, TODAY)).toBe('7 in 10 by Sat 22 May and 19 in 20 by Sat 29 May.');
    expect(oddsText({ days: [], draws: 400 }, TODAY)).toBe('Less than 1 in 2 within the days planned ahead.');
  });

  describe('of a day that is offered', () => {
    const days = [kept('2027-05-22', 311), kept('2027-05-29', 399)];
    const odds = { days, draws: 400, due: null, spares: [], dependsOn: null, restsOn: NOTHING, isEnough: false };
    const offered = { promiseOn: '2027-05-22', promiseOdds: null, sessionsInHand: 1, deliveryDaysInHand: 0 } as const;

    test('are told with what it goes by, and those of the other days apart', () => {
      expect(howSureText(odds, { ...kept('2027-05-22', 311), ...offered }, TODAY)).toBe(
        'Sat 22 May, offered with one session in hand, is kept 7 in 10 times.',
      );
      expect(othersText(odds, '2027-05-22', TODAY)).toBe('19 in 20 by Sat 29 May.');
      expect(othersText({ days: [days[1]!], draws: 400 }, '2027-05-29', TODAY)).toBeNull();
    });

    test('are those it was chosen by', () => {
      const byOdds = { ...offered, promiseOdds: 0.9 as const, sessionsInHand: 0 };
      expect(howSureText(odds, { ...kept('2027-05-29', 399), ...byOdds }, TODAY)).toBe(
        'Sat 29 May, the day offered, is the first kept 9 in 10 times or more.',
      );
    });

    test('without time in hand it is just the day offered', () => {
      const plain = { ...offered, sessionsInHand: 0 };
      expect(howSureText(odds, { ...kept('2027-05-22', 311), ...plain }, TODAY)).toBe(
        'Sat 22 May, the day offered, is kept 7 in 10 times.',
      );
    });
  });

  test.each([
    [280, 'Sat 22 May, its date, is kept 7 in 10 times.'],
    [351, 'Sat 22 May, its date, is kept 8 in 10 times.'],
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
    expect(restsOnText({ restsOn: NOTHING, isEnough: false })).toBe('Rests on guesses: nothing is on record yet.');
  });

  test('a spare piece', () => {
    const spare = { casting: 'a', name: 'Panel 900', count: 12, allGood: 0.54, poured: 13, enoughGood: 0.865 };
    const said = '12 of Panel 900 are still to come out: all good 1 in 2. With 13 poured, enough are good 8 in 10.';
    expect(spareText({ ...spare, planned: null }, TODAY)).toBe(said);
    expect(spareText({ ...spare, planned: 'there' }, TODAY)).toBe(`${said} One to spare stands in the yard.`);
    expect(spareText({ ...spare, planned: '2027-05-08' }, TODAY)).toBe(`${said} One to spare comes out Sat 8 May.`);
  });
});
