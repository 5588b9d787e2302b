import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lengthText, MM_PER_INCH, readLength, shortLengthText } from '../../../src/engine/units/length.ts';

const mmOf = (text: string, system: 'metric' | 'US' = 'metric') => {
  const length = readLength(text, system);
  if (!length.ok) throw new Error(length.reason);
  return length.value.mm;
};
const reasonOf = (text: string) => {
  const length = readLength(text, 'metric');
  return length.ok ? `read as ${length.value.mm}` : length.reason;
};

describe('a typed length', () => {
  // 1 in = 25.4 mm exactly: NIST SP 811 (2008), B.8, and 16 CFR 500.19 ("1 inch = 2.54 cm", exactly). 54 x 25.4 = 1371.6.
  test.each([
    ['4 ft 6 in', 1371.6],
    [`4' 6"`, 1371.6],
    [`4'6"`, 1371.6],
    [`4'-6"`, 1371.6],
    ['4’ 6”', 1371.6],
    ['4′ 6″', 1371.6],
    [`4' 6''`, 1371.6],
    ['4ft6', 1371.6],
    ['4 ft. 6 in.', 1371.6],
    ['4 feet, 6 inches', 1371.6],
    ['4 1/2 ft', 1371.6],
    ['54 in', 1371.6],
    ['54"', 1371.6],
    ['54 1/2 in', 1384.3],
    ['54-1/2"', 1384.3],
    ['54½ in', 1384.3],
    ['54.5 in', 1384.3],
    ['54,5 in', 1384.3],
    ['4 ft 6 1/2 in', 1384.3],
    ['½ in', 12.7],
    ['1/16 in', 1.5875],
    ['.5 in', 12.7],
    ['1.37 m', 1370],
    ['1,37 m', 1370],
    ['0,375 m', 375],
    ['1.370 m', 1370],
    ['1370 mm', 1370],
    ['1370', 1370],
    ['  1370  ', 1370],
    ['137 cm', 1370],
    ['137,5cm', 1375],
    ['1 m 37 cm', 1370],
    ['1 Metre', 1000],
    ['0', 0],
  ])('%j is %f mm', (text, mm) => {
    expect(mmOf(text)).toBe(mm);
  });

  test('without a unit is inches in a yard that measures so', () => {
    expect(mmOf('54', 'US')).toBe(1371.6);
    expect(mmOf('54 1/2', 'US')).toBe(1384.3);
    expect(mmOf('1370 mm', 'US')).toBe(1370);
  });

  test('keeps what was typed', () => {
    expect(readLength(` 4' 6" `, 'metric')).toEqual({ ok: true, value: { typed: `4' 6"`, mm: 1371.6 } });
  });

  test.each([
    ['', 'Nothing was written. Write it like 1370 mm, 1.37 m or 4 ft 6 in.'],
    ['about a metre', '"about a metre" is not a length.'],
    ['54 lb', '"lb" is not a unit for a length here.'],
    ['1,370', '"1,370" could be 1370 or 1.37. Write it without the comma.'],
    ['1/0 in', '"1/0" divides by nothing.'],
    ['-5 mm', '"-5 mm" is not a length.'],
    ['6 in 4 ft', '"6 in 4 ft" is not a length.'],
    ['4.5 ft 6 in', '"4.5 ft 6 in" is not a length.'],
    ['1 m 6 in', '"1 m 6 in" is not a length.'],
    ['1200 600', '"1200 600" is not a length.'],
    ['1 m 37', '"1 m 37" is not a length.'],
    ['1e3 mm', '"e" is not a unit for a length here.'],
    ['99999999999 mm', '"99999999999 mm" is far too much.'],
  ])('%j is refused: %s', (text, reason) => {
    expect(reasonOf(text)).toContain(reason);
  });
});

describe('a length written out', () => {
  test.each([
    [1370, '1370 mm', '4 ft 5 15/16 in'], // 1370 / 25.4 = 53.937; 15/16 = 0.9375
    [1371.6, '1371.6 mm', '4 ft 6 in'],
    [1384.3, '1384.3 mm', '4 ft 6 1/2 in'],
    [914.4, '914.4 mm', '3 ft'],
    [12.7, '12.7 mm', '1/2 in'],
    [38.1, '38.1 mm', '1 1/2 in'],
    [0, '0 mm', '0 in'],
    [304, '304 mm', '11 15/16 in'], // 304 / 25.4 = 11.9685, just below 11.96875, halfway from 11 15/16 to 12
    [304.79, '304.8 mm', '1 ft'],
  ])('%f mm is %j or %j', (mm, metric, us) => {
    expect([lengthText(mm, 'metric'), lengthText(mm, 'US')]).toEqual([metric, us]);
  });
});

test.each([
  [1371.6, '1371.6', '54"'],
  [1384.3, '1384.3', '54 1/2"'],
  [12.7, '12.7', '1/2"'],
  [0, '0', '0"'],
])('%f mm in a drawing is %j or %j', (mm, metric, us) => {
  expect([shortLengthText(mm, 'metric'), shortLengthText(mm, 'US')]).toEqual([metric, us]);
});

describe('there and back again', () => {
  test('sixteenths of an inch lose nothing', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40 * 12 * 16 }), (sixteenths) => {
        const mm = (sixteenths * MM_PER_INCH) / 16;
        expect(mmOf(lengthText(mm, 'US'))).toBeCloseTo(mm, 9);
        expect(lengthText(mmOf(lengthText(mm, 'US')), 'US')).toBe(lengthText(mm, 'US'));
      }),
    );
  });
  test('tenths of a millimetre lose nothing, and any length less than half a step', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 200_000 }), (tenths) => {
        const mm = tenths / 10;
        expect(mmOf(lengthText(mm, 'metric'))).toBe(mm);
        expect(Math.abs(mmOf(lengthText(mm, 'US')) - mm)).toBeLessThanOrEqual(MM_PER_INCH / 32 + 1e-9);
      }),
    );
  });
});

test('whatever is typed is read, or refused in words', () => {
  const pieces = fc.constantFrom(
    '4',
    '6',
    '1/2',
    '0',
    '12,5',
    '1.37',
    ' ',
    ' ',
    'ft',
    'in',
    "'",
    '"',
    'mm',
    'm',
    '½',
    '-',
    ',',
    '.',
    '/',
    'x',
  );
  fc.assert(
    fc.property(
      fc.oneof(
        fc.array(pieces, { maxLength: 8 }).map((all) => all.join('')),
        fc.string(),
      ),
      (text) => {
        const length = readLength(text, 'US');
        if (length.ok) expect(length.value.mm).toBeGreaterThanOrEqual(0);
        else expect(length.reason).toMatch(/Write it like/);
      },
    ),
    { numRuns: 2000 },
  );
});
