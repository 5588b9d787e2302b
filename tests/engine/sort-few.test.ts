import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sortFew } from '../../src/engine/sort-few.ts';

test('as the list sort of the language has it, equal ones in their order', () => {
  const pairs = fc.array(fc.tuple(fc.integer({ min: 0, max: 4 }), fc.integer()), { maxLength: 12 });
  fc.assert(
    fc.property(pairs, (list) => {
      const compare = ([a]: [number, number], [b]: [number, number]) => a - b;
      expect(sortFew([...list], compare)).toEqual([...list].sort(compare));
    }),
  );
});
