import { describe, expect, test } from 'vitest';
import { dayOut, loadFacts } from '../../../src/usecases/orders/going-out.ts';
import { smallYard } from '../../support/small-yard.ts';

describe('the day on which an order goes out', () => {
  test.each([
    // [promised, ready by plan, day]
    [null, '2027-04-17', '2027-04-17'],
    ['2027-05-08', '2027-04-17', '2027-05-08'],
    ['2027-04-10', '2027-04-17', '2027-04-17'],
    ['2027-04-01', '2027-04-03', '2027-04-05'],
  ])('promised for %s and ready on %s, seen on 5 April: %s', (promisedOn, completesOn, on) => {
    expect(dayOut({ promisedOn }, { completesOn }, '2027-04-05')).toBe(on);
  });

  test('there is none for what cannot be made', () => {
    expect(dayOut({ promisedOn: '2027-05-08' }, undefined, '2027-04-05')).toBeNull();
  });
});

describe('what the pieces of a day come to', () => {
  const base = smallYard();
  const [long, short] = [
    { ...base.castings[0]!, id: 'long', name: 'Panel 1200', kg: 30 },
    { ...base.castings[0]!, id: 'short', name: 'Panel 600', kg: 14 },
  ];
  const kits = [
    {
      ...base.kits[0]!,
      id: 'box',
      pieces: [
        { casting: 'long', count: 2 },
        { casting: 'short', count: 2 },
      ],
    },
  ];
  const yard = { ...base, castings: [long!, short!], kits };
  const seen = { yard, offers: [], system: 'metric' as const };
  const boxes = (quantity: number) => ({ lines: [{ kit: 'box', quantity }] });

  test('two boxes and one more are 264 kg, the heaviest piece 30 kg', () => {
    // 3 × (2 × 30 + 2 × 14) = 3 × 88 = 264 kg.
    expect(loadFacts([boxes(2), boxes(1)], null, seen)).toEqual({
      ...{ mass: '264 kg', heaviest: { name: 'Panel 1200', mass: '30 kg', lifting: 'two' }, carried: null },
    });
  });

  test('at 100 kg a load they go in three, worked out by hand', () => {
    // 264 kg at 100 kg are 3 loads at least. 2 × 30 + 2 × 14 = 88 kg, three times: it can be done.
    expect(loadFacts([boxes(3)], 100, seen)?.carried).toMatchObject({ payload: '100 kg', count: 3 });
  });

  test('a piece that is too heavy by itself leaves no load', () => {
    expect(loadFacts([boxes(1)], 20, seen)?.carried).toEqual({ payload: '20 kg', count: 0, loads: [] });
  });

  test('without pieces there is nothing to lift', () => {
    expect(loadFacts([{ lines: [] }], 100, seen)).toBeNull();
  });
});
