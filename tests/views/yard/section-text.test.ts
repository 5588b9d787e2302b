import { describe, expect, test } from 'vitest';
import type { YardModel } from '../../../src/usecases/yard/show-yard.ts';
import { missingAnswer, nextSection, sectionText } from '../../../views/yard/section-text.ts';

const model: YardModel = {
  ...{ yardName: 'Hill yard', today: '2027-04-08', missing: [], guesses: 0 },
  about: { timeZone: 'America/New_York', system: 'US', currency: 'USD', weekStart: 'SU', floatDays: 1 },
  panels: { names: ['Panel 1200', 'Panel 900'], withoutMould: [] },
  moulds: {
    count: 6,
    kinds: [
      { kind: '1200', count: 3 },
      { kind: '900', count: 3 },
    ],
    scrapped: 0,
  },
  mixes: { names: ['Thin mix'], withoutBags: [] },
  kits: [],
  hours: { sessions: 8, minutesAWeek: 570, weeks: 4 },
  stock: { count: 3, suppliers: 1, notBought: [] },
  temperature: { now: '48.2 °F', endsBefore: null },
  weatherDays: 0,
  costs: {},
};
const text = (key: Parameters<typeof sectionText>[0], changes: Partial<YardModel> = {}) =>
  sectionText(key, { ...model, ...changes });

describe('the first line of the yard', () => {
  test.each([
    [[], 'Your yard is ready to give dates.'],
    [[{ kind: 'hours' }], 'One thing is missing for a first date: hours.'],
    [[{ kind: 'mix' }, { kind: 'hours' }], 'Two things are missing for a first date: a mix, and hours.'],
    [
      [{ kind: 'else', piece: 'Panel 900', reason: 'Fast-setting mortar cannot be bought' }],
      "Panel 900 can't have a date yet, because Fast-setting mortar cannot be bought.",
    ],
  ] as const)('%#', (missing, words) => {
    expect(missingAnswer([...missing])).toBe(words);
  });
});

test("the way on leads to the mix first, then in a maker's order", () => {
  expect(nextSection([])).toBeNull();
  expect(nextSection([{ kind: 'panel' }, { kind: 'mould' }, { kind: 'mix' }])?.key).toBe('mixes');
  expect(nextSection([{ kind: 'panel' }, { kind: 'mould' }])?.key).toBe('panels');
  expect(nextSection([{ kind: 'hours' }])?.key).toBe('hours');
  expect(nextSection([{ kind: 'else', piece: 'Panel 900', reason: 'none' }])).toBeNull();
});

describe('a section', () => {
  test('says what is there in one sentence or two', () => {
    expect(text('about').there).toBe(
      'Hill yard, in America/New York time. Sizes in feet, inches and pounds, money in USD, weeks from Sunday.',
    );
    expect(text('moulds')).toEqual({ there: '6 moulds: 3 of 1200 and 3 of 900.', missing: null });
    expect(text('hours').there).toBe('8 sessions in the next 4 weeks, 9.5 hours a week.');
    expect(text('kits').there).toBe('No kit is there yet. Single panels can be ordered without one.');
  });

  test('says what is missing in it', () => {
    expect(text('panels', { panels: { names: ['Panel 900'], withoutMould: ['Panel 900'] } }).missing).toBe(
      'No mould in use makes Panel 900.',
    );
    expect(text('hours', { hours: { sessions: 0, minutesAWeek: 0, weeks: 4 } }).missing).toBe('Say when you work.');
    expect(text('stock', { stock: { count: 2, suppliers: 0, notBought: ['Mesh'] } }).missing).toBe(
      'How long Mesh takes to come is not recorded.',
    );
    expect(text('temperatures', { temperature: { now: '9 °C', endsBefore: '2027-05-01' } }).missing).toContain(
      'until May 2027',
    );
  });

  test('counts scrapped moulds apart', () => {
    const moulds = { count: 3, kinds: [{ kind: '900', count: 3 }], scrapped: 2 };
    expect(text('moulds', { moulds }).there).toBe('3 of 900. Two more are scrapped.');
  });

  test('names no more than six of many', () => {
    const names = Array.from({ length: 9 }, (_, n) => `Panel ${n}`);
    expect(text('panels', { panels: { names, withoutMould: [] } }).there).toBe(
      '9 kinds: Panel 0, Panel 1, Panel 2, Panel 3, Panel 4 and 4 more.',
    );
  });
});
