import { expect, test } from 'vitest';
import { type Lifting, liftingOf } from '../../../src/engine/kits/lifting.ts';
import { BAG_LIFTING, liftingText, pieceLiftText } from '../../../views/words/lifting-text.ts';

const piece = (lifting: Lifting) => ({ name: 'Panel 1200', mass: '18 kg', lifting });

test('the heaviest piece comes with what it means for lifting', () => {
  const words = (lifting: Lifting) => liftingText(piece(lifting));
  expect(words('one')).toMatch(/^The heaviest piece is Panel 1200 at 18 kg\. That is within the lower lifting filter/);
  expect(words('one with care')).toContain('a second person or a trolley');
  expect(words('two')).toContain('lift it with two');
  expect(words('more')).toContain('a trolley, a tilt frame or more people');
});

test('one piece says what it weighs, and whose filters these are', () => {
  expect(pieceLiftText(piece('two'))).toMatch(/^Panel 1200 weighs 18 kg\. That is over .* \(HSE INDG143\.\)$/);
});

/* Masses of bags as they are sold: 25 kg, 27.5 kg (60 lb), 36 kg (80 lb); the packs say so. */
test('of bags it is said what the filters say of the masses that are named', () => {
  expect([25, 27.5, 36].map(liftingOf)).toEqual(['one with care', 'two', 'more']);
  expect(BAG_LIFTING).toMatch(/25 kg .* most for one, .* 27\.5 kg .* for two, and 36 kg .* too much for two/);
});
