import { expect, test } from 'vitest';
import type { MaterialBuying } from '../../../shared/supplier.ts';
import {
  materialBuyingTexts,
  materialBuyingTyped,
  NO_BUYING,
} from '../../../src/usecases/typed/material-buying-form.ts';

const BAG = { unit: 'bag', pack: 1 };
const EUR = { system: 'metric', currency: 'EUR' } as const;
const typed = (fields: Record<string, string>, before: MaterialBuying = NO_BUYING, bought = BAG) =>
  materialBuyingTyped(fields, before, bought, EUR);
const refused = (path: string, message: string) => ({ ok: false, faults: [{ path, message }] });
const many = (count: number) => Array.from({ length: count }, (_, at) => `from ${at + 1} at ${99 - at}`).join('; ');

test('price breaks are read in packs, the fewest first', () => {
  expect(typed({ breaks: 'from 40 at 8.20; 10 at 8.90' })).toMatchObject({
    ok: true,
    value: {
      breaks: [
        { from: 10, unitPrice: 8.9 },
        { from: 40, unitPrice: 8.2 },
      ],
    },
  });
  expect(typed({ breaks: many(20) })).toMatchObject({ ok: true });
});

test('two prices from one amount on are refused at their field, and more steps than a price list has', () => {
  expect(typed({ breaks: 'from 10 at 8.90; from 10 at 8.20' })).toEqual(
    refused('breaks', 'Has two prices from one amount on. Leave one of them out.'),
  );
  expect(typed({ breaks: many(21) })).toEqual(refused('breaks', 'Has 21 steps. 20 are the most.'));
});

test('figures that no file could hold are refused in words, each at its field', () => {
  expect(typed({ kgPerUnit: '9999999999 kg' })).toEqual(
    refused('kgPerUnit', '"9999999999 kg" is far too much. Write it like 25 kg or 55 lb.'),
  );
  expect(typed({ breaks: 'from 999999 at 1' }, NO_BUYING, { unit: 'g', pack: 5000 })).toEqual(
    refused('breaks', 'Is more than 1,000,000,000.'),
  );
});

test('what was said before there were limits may stay', () => {
  const before = {
    ...NO_BUYING,
    breaks: [
      { from: 10, unitPrice: 9 },
      { from: 10, unitPrice: 8 },
    ],
  };
  const shown = materialBuyingTexts(before, BAG, EUR);
  expect(typed({ ...shown, kgPerUnit: '25 kg' }, before)).toMatchObject({
    ok: true,
    value: { kgPerUnit: 25, breaks: before.breaks },
  });
});
