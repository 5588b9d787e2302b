import { describe, expect, test } from 'vitest';
import type { FitModel } from '../../../src/usecases/begin/fit-times.ts';
import {
  fittedAnswer,
  fittedNote,
  makesText,
  rangeText,
  thereText,
  usualAnswer,
} from '../../../views/begin/begin-text.ts';

const saturday = { weekday: 'SA', pieces: 11, turns: 3 } as const;
const model = (usual: FitModel['usual']): FitModel => ({
  ...{ yardName: 'Our yard', today: '2027-04-05', usual, first: null, fitted: null, wrong: null },
});
const fitted = (changes: Partial<NonNullable<FitModel['fitted']>>) => ({
  ...{ asked: 8, makes: { ...saturday, pieces: 8, turns: 2 }, heldBy: null, same: false, times: [], ...changes },
});

describe('what a usual session makes, in words', () => {
  test('as it is', () => {
    expect(usualAnswer(model(saturday))).toBe('By these figures a Saturday makes 11 panels in 3 turns.');
    expect(makesText({ weekday: 'WE', pieces: 1, turns: 1 })).toBe('a Wednesday makes 1 panel in 1 turn');
    expect(usualAnswer(model({ ...saturday, pieces: 0, turns: 0 }))).toBe('By these figures a Saturday makes nothing.');
    expect(usualAnswer(model(null))).toBe('No session makes anything yet.');
  });

  test('as it would be with other times', () => {
    expect(fittedAnswer(fitted({}))).toBe('With these times a Saturday makes 8 panels in 2 turns.');
    expect(fittedAnswer(fitted({ same: true }))).toBe('By these figures a Saturday makes 8 panels in 2 turns already.');
    expect(fittedNote(fitted({ same: true }))).toContain('Nothing has to be changed.');
    const short = fitted({ asked: 20, heldBy: 'moulds' });
    expect(fittedAnswer(short)).toBe("A Saturday can't make 20: 8 is the nearest.");
    expect(fittedNote(short)).toContain('held up by the moulds you have');
    expect(fittedNote(fitted({ asked: 20, heldBy: 'hours' }))).toContain('held up by the hours');
    expect(fittedNote(fitted({ asked: 7 }))).toContain('never come to just that number');
  });
});

test('minutes of one length or of several', () => {
  expect(rangeText([8, 8])).toBe('8');
  expect(rangeText([12, 10, 14])).toBe('10 to 14');
});

test('what would be put away', () => {
  expect(thereText({ moulds: 1, kits: 0, orders: 2 })).toBe('1 mould and 2 open orders');
  expect(thereText({ moulds: 0, kits: 0, orders: 0 })).toBe('an empty yard');
});
