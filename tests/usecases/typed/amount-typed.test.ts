import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { UnitSystem } from '../../../shared/units.ts';
import { amountField, amountTyped, asTyped, worthKeeping } from '../../../src/usecases/typed/amount-typed.ts';

/* 1 oz = 28.349523125 g exactly, NIST SP 811 (2008), appendix B: 500 g are 17.636980974790206 oz. */
describe('a field that the page filled in', () => {
  test('means exactly what it was filled in from while it is left as it is', () => {
    expect(amountField(500, 'g', 'US')).toBe('17.64');
    expect(amountTyped({ text: '17.64', was: '500' }, 'g', 'US')).toEqual({ ok: true, value: 500 });
    expect(amountTyped({ text: '17.65', was: '500' }, 'g', 'US')).toEqual({ ok: true, value: 500.36908315625 });
    // Without what it was filled in from, the number is what it says.
    expect(amountTyped({ text: '17.64' }, 'g', 'US')).toEqual({ ok: true, value: 500.085587925 });
  });

  test('does so for any amount, in any unit, of either system', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e7 }),
        fc.constantFrom('g', 'kg', 'ml', 'l', 'mm', 'm', 'm2', 'bag', 'lb'),
        fc.constantFrom<UnitSystem>('metric', 'US'),
        (thousandths, unit, system) => {
          const exact = thousandths / 1000;
          const text = amountField(exact, unit, system);
          expect(amountTyped({ text, was: String(exact) }, unit, system)).toEqual({ ok: true, value: exact });
        },
      ),
    );
  });

  test.each(['', 'much', '-3', 'NaN', '1e999'])('is not led astray by "%s" in place of what it was', (was) => {
    expect(amountTyped({ text: '2', was }, 'bag', 'metric')).toEqual({ ok: true, value: 2 });
  });

  test('says nothing when it is empty', () => {
    expect(amountTyped({ text: '', was: '500' }, 'g', 'US')).toEqual({ ok: true, value: null });
  });
});

test('more than a yard file may hold is refused, of whatever is counted', () => {
  for (const [text, unit] of [
    ['1000000001', 'bag'],
    ['99999999999999', 'stick'],
  ] as const)
    expect(amountTyped({ text }, unit, 'metric')).toEqual({ ok: false, reason: 'Is more than 1,000,000,000.' });
  expect(amountTyped({ text: '1000000000' }, 'bag', 'metric')).toEqual({ ok: true, value: 1_000_000_000 });
});

test('what names its unit is worth keeping, and is seen again while it still is so', () => {
  expect([worthKeeping('1 kg'), worthKeeping('2 1/2'), worthKeeping('2,5'), worthKeeping('')]).toEqual([
    '1 kg',
    null,
    null,
    null,
  ]);
  expect(asTyped('1 kg', 1000, 'g', 'US')).toBe('1 kg');
  expect(asTyped('1 kg', 943, 'g', 'US')).toBeNull();
  expect(asTyped(undefined, 1000, 'g', 'US')).toBeNull();
  expect(asTyped('a heap', 1000, 'g', 'US')).toBeNull();
});

test('whole ones and their parts have two decimals at most: three may be thousands', () => {
  const wrong = (text: string) => ({
    ok: false,
    reason: `"${text}" has more than two decimals. Write whole ones, or parts like 2.5; and thousands with no sign between.`,
  });
  expect(amountTyped({ text: '1.200' }, 'bag', 'metric')).toEqual(wrong('1.200'));
  expect(amountTyped({ text: '0.125 sheets' }, 'sheet', 'US')).toEqual(wrong('0.125 sheets'));
  expect(amountTyped({ text: '1.25' }, 'bag', 'metric')).toEqual({ ok: true, value: 1.25 });
  expect(amountTyped({ text: '1.125' }, 'kg', 'metric')).toEqual({ ok: true, value: 1.125 });
  // As the page had it, it stays as exact as it is.
  expect(amountTyped({ text: '6.58', was: '6.576' }, 'bag', 'metric')).toEqual({ ok: true, value: 6.576 });
});
