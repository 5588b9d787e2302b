import { describe, expect, test } from 'vitest';
import { minorDigits } from '../../../src/engine/cost/minor-units.ts';
import { moneyTyped } from '../../../src/usecases/typed/money-typed.ts';
import { moneyField, moneyText } from '../../../views/parts/money-text.ts';

test('decimals are those of the currency (ISO 4217)', () => {
  expect(['EUR', 'USD', 'JPY', 'KWD', 'CLP'].map(minorDigits)).toEqual([2, 2, 0, 3, 0]);
});

describe('a price as it is typed', () => {
  test.each([
    ['129', 'EUR', 129],
    ['129.5', 'EUR', 129.5],
    ['129,50', 'EUR', 129.5],
    ['€129.50', 'EUR', 129.5],
    ['129.50 EUR', 'EUR', 129.5],
    ['$1,250.00', 'USD', 1250],
    ['US$ 12', 'USD', 12],
    ['1,250', 'EUR', 1250],
    ["1'250.00", 'CHF', 1250],
    ['1 250 000', 'SEK', 1250000],
    ['1 250,50', 'EUR', 1250.5],
    ['1.250,50 €', 'EUR', 1250.5],
    ['1.250.000,5', 'EUR', 1250000.5],
    ["1'250,5", 'CHF', 1250.5],
    ['1,250,000', 'EUR', 1250000],
    ['12,50', 'EUR', 12.5],
    ['$12.50', 'USD', 12.5],
    ['¥12900', 'JPY', 12900],
    ['1.250', 'KWD', 1.25],
    ['0,125', 'KWD', 0.125],
    ['', 'EUR', null],
  ])('%j in %s', (text, currency, value) => {
    expect(moneyTyped(text, currency)).toEqual({ ok: true, value });
  });

  test.each([
    ['dear', 'EUR', '"dear" is no price. Write it like 129.00.'],
    ['1.250', 'EUR', 'EUR has 2 decimals at most. Write it like 129.00.'],
    ['1.250.000', 'EUR', '"1.250.000" is no price. Write it like 129.00.'],
    ['1,25,000', 'EUR', '"1,25,000" is no price. Write it like 129.00.'],
    ['-3', 'EUR', '"-3" is no price. Write it like 129.00.'],
    ['$12', 'EUR', '"$12" is no price. Write it like 129.00.'],
    [
      '1,234',
      'KWD',
      '"1,234" could be thousands or decimals. Leave the comma out, or write a point. Write it like 129.000.',
    ],
    ['12.345', 'EUR', 'EUR has 2 decimals at most. Write it like 129.00.'],
    ['129.5', 'JPY', 'JPY has no smaller part, so "129.5" can\'t be paid. Write it like 129.'],
  ])('%j in %s is refused', (text, currency, reason) => {
    expect(moneyTyped(text, currency)).toEqual({ ok: false, reason });
  });
});

test.each([
  ['EUR', 129, '€129.00', '129.00'],
  ['USD', 1250.5, '$1,250.50', '1250.50'],
  ['AUD', 12, '$12.00', '12.00'],
  ['JPY', 12900, '¥12,900', '12900'],
  ['KWD', 1.25, 'KWD\u00a01.250', '1.250'],
])('in %s %d is written %s, and reads back from the page and the field', (currency, amount, text, field) => {
  expect(moneyText(amount, currency)).toBe(text);
  expect(moneyField(amount, currency)).toBe(field);
  for (const written of [text, field]) expect(moneyTyped(written, currency)).toEqual({ ok: true, value: amount });
});
