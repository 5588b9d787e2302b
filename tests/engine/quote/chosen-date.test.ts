import { describe, expect, test } from 'vitest';
import { askForDate } from '../../../src/engine/quote/chosen-date.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const pair = (id: string, due?: string, weight = 1) => ({ id, due, weight, lines: [{ kit: 'pair', quantity: 1 }] });
/** Two moulds that turn once a Saturday: one pair ready on the 17th, one on the 24th, one on 1 May. */
const yardOf = (...orders: ReturnType<typeof pair>[]) =>
  smallYard({ mixes: [{ ...base.mixes[0]!, demouldMinutes: 1000 }], orders });
const ask = (yard: ReturnType<typeof yardOf>, on: string) => askForDate(yard, pair('new'), on);

describe('a pair wanted on a chosen day', () => {
  test('pushes nobody where there is time', () => {
    expect(ask(yardOf(), '2027-04-17')).toEqual({ possible: true, pushes: [] });
    expect(ask(yardOf(pair('a', '2027-04-17')), '2027-04-24')).toEqual({ possible: true, pushes: [] });
    expect(ask(yardOf(pair('a', '2027-04-24')), '2027-04-17')).toEqual({ possible: true, pushes: [] });
  });

  test('pushes a promise by a week', () => {
    expect(ask(yardOf(pair('a', '2027-04-17')), '2027-04-17')).toEqual({
      possible: true,
      pushes: [{ order: 'a', from: '2027-04-17', to: '2027-04-24', days: 7 }],
    });
  });

  // Both places before the 24th push b, the second of the two; going first would push a as well.
  test('pushes what costs the others least', () => {
    const yard = yardOf(pair('a', '2027-04-17', 6), pair('b', '2027-04-24', 1));
    expect(ask(yard, '2027-04-24')).toEqual({
      possible: true,
      pushes: [{ order: 'b', from: '2027-04-24', to: '2027-05-01', days: 7 }],
    });
  });

  // It is a week late as it is: what counts is by how much later than that.
  test('counts from the day a late promise has now', () => {
    const { pushes } = ask(yardOf(pair('a', '2027-04-10')), '2027-04-17');
    expect(pushes).toEqual([{ order: 'a', from: '2027-04-17', to: '2027-04-24', days: 7 }]);
  });

  // Two Saturdays to the horizon: the one pair that can be made is promised, and would not be made at all.
  test('is not to be had where a promise could not be kept at all', () => {
    const yard = yardOf(pair('a', '2027-04-17'));
    const short = { ...yard, yard: { ...yard.yard, horizonDays: 10 } };
    expect(ask(short, '2027-04-17')).toMatchObject({ possible: false, pushes: [] });
  });

  test('is not to be had on a day before anything could be stripped', () => {
    expect(ask(yardOf(), '2027-04-16')).toMatchObject({ possible: false, pushes: [] });
  });
});
