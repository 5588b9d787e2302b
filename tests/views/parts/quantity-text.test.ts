import { expect, test } from 'vitest';
import { listText } from '../../../shared/list-text.ts';
import { countedText, countWord, quantityText } from '../../../views/parts/quantity-text.ts';

test.each([
  [6, 'bag', '6 bags'],
  [1, 'bag', '1 bag'],
  [0.5, 'bag', 'half a bag'],
  [0.5, 'ounce tin', 'half an ounce tin'],
  [0.5, 'kg', '0.5 kg'],
  [500, 'g', '500 g'],
  [3.456, 'm2', '3.46 m²'],
  [0.1 + 0.2, 'kg', '0.3 kg'],
  [17.637, 'oz', '17.64 oz'],
  [18.02, 'sq ft', '18.02 sq ft'],
  [2, 'fl oz', '2 fl oz'],
  [10, 'each', '10 ×'],
  [2, '', '2 ×'],
])('%d of "%s" is "%s"', (quantity, unit, text) => expect(quantityText(quantity, unit)).toBe(text));

test('lists end in "and"', () => {
  expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(listText)).toEqual(['', 'a', 'a and b', 'a, b and c']);
});

test('a name with a comma of its own is told from the next by a semicolon', () => {
  expect(listText(['Mortar, 25 kg', 'Rod', 'Mesh'])).toBe('Mortar, 25 kg; Rod; and Mesh');
  expect(listText(['Mortar, 25 kg', 'Rod'])).toBe('Mortar, 25 kg and Rod');
  expect(listText(['€1,250.50 an hour', '€12.00 a session', 'a margin'])).toBe(
    '€1,250.50 an hour, €12.00 a session and a margin',
  );
});

test('what is there more than once is counted', () => {
  expect(countedText(['900 no. 1', '900 no. 2', '900 no. 1'])).toBe('900 no. 1 (twice) and 900 no. 2');
  expect(countedText(['a', 'a', 'a'])).toBe('a (3 times)');
});

test('small numbers begin a sentence as words', () => {
  expect([countWord(1), countWord(10), countWord(11)]).toEqual(['One', 'Ten', '11']);
});
