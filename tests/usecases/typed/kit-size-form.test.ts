import { describe, expect, test } from 'vitest';
import { type KitTyped, kitSizeTyped } from '../../../src/usecases/typed/kit-size-form.ts';

const typed: KitTyped = { shape: 'rectangle', length: `4' 6"`, width: '1.2 m', courses: '2', ground: '100' };
const faultsOf = (changes: KitTyped) => {
  const asked = kitSizeTyped({ ...typed, ...changes }, 'metric');
  return asked.ok ? [] : asked.faults.map(({ path, message }) => `${path}: ${message}`);
};

describe('a size that was typed', () => {
  test('is read in whatever units it came, and kept as it was typed', () => {
    const asked = kitSizeTyped({ ...typed, payload: '400 lb' }, 'metric');
    expect(asked).toEqual({
      ok: true,
      value: {
        payloadKg: 181.436948, // 400 x 0.45359237
        size: {
          ...{ shape: 'rectangle', faces: 'outside', courses: 2, ground: { typed: '100', mm: 100 } },
          ...{ length: { typed: `4' 6"`, mm: 1371.6 }, width: { typed: '1.2 m', mm: 1200 } },
        },
      },
    });
  });

  test('has the fields of its shape, and no others', () => {
    const row = kitSizeTyped({ ...typed, shape: 'row', width: 'nonsense', cutLength: 'nonsense' }, 'metric');
    expect(row.ok && Object.keys(row.value.size).sort()).toEqual(['courses', 'faces', 'ground', 'length', 'shape']);
  });

  test('says everything that is wrong with it at once', () => {
    expect(faultsOf({ length: '', width: 'wide', courses: '0', ground: '-1', payload: 'much' })).toEqual([
      'length: Nothing was written. Write it like 1370 mm, 1.37 m or 4 ft 6 in.',
      'width: "wide" is not a length. Write it like 1370 mm, 1.37 m or 4 ft 6 in.',
      'courses: How many courses? Write a whole number from 1 to 12.',
      'ground: "-1" is not a length. Write it like 1370 mm, 1.37 m or 4 ft 6 in.',
      'payload: "much" is not a weight. Write it like 25 kg or 55 lb.',
    ]);
  });

  test.each([
    [{ length: '0' }, 'length: Has to be more than nothing.'],
    [{ length: '21 m' }, 'length: That is more than 20 m'],
    [{ courses: '13' }, 'courses: How many courses?'],
    [{ courses: '1.5' }, 'courses: How many courses?'],
    [{ ground: '4 m' }, 'ground: That is more than 3 m'],
    [{ payload: '0' }, 'payload: Has to be more than nothing.'],
    [{ shape: 'L', cutLength: '1371.6', cutWidth: '1' }, 'cutLength: The corner left out has to be smaller'],
    [{ shape: 'L', cutLength: '600', cutWidth: '1200' }, 'cutWidth: The corner left out has to be smaller'],
  ])('%j is refused: %s', (changes, message) => {
    expect(faultsOf(changes as KitTyped)).toHaveLength(1);
    expect(faultsOf(changes as KitTyped)[0]).toContain(message);
  });

  test('pins may end at the ground, and a shape that is none is a rectangle', () => {
    expect(faultsOf({ ground: '0', shape: 'circle', faces: 'middle' })).toEqual([]);
  });
});
