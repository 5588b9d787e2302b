import { describe, expect, test } from 'vitest';
import { ageText, curveSource, shareText, strengthAnswer, strengthText } from '../../../views/yard/strength-words.ts';

const stage = (strength: { share: number } | { unknown: 'young' | 'frost' }) =>
  ({ at: 'out', day: '2027-04-12', hours: 168, strength }) as const;

describe('how strong a piece is, in words', () => {
  test('a share is rounded down, never up', () => {
    expect(strengthText(stage({ share: 0.7899 }))).toBe('about 78 % of its 28-day strength');
    expect(strengthText(stage({ share: 1 }))).toBe('its full 28-day strength');
    expect(strengthAnswer(stage({ share: 0.7899 }), '2027-04-05')).toBe(
      'About 78 % of its 28-day strength by Mon 12 Apr.',
    );
  });

  test('what no curve says is said plainly', () => {
    expect(strengthText(stage({ unknown: 'young' }))).toBe('not known: too young for any curve');
    expect(strengthAnswer(stage({ unknown: 'young' }), '2027-04-05')).toBe('Too young for any curve by Mon 12 Apr.');
    expect(strengthAnswer(stage({ unknown: 'frost' }), '2027-04-05')).toBe('No curve holds in frost by Mon 12 Apr.');
  });

  test('ages, shares and sources', () => {
    expect([1, 41, 48, 170].map(ageText)).toEqual(['1 hour', '41 hours', '2 days', '7 days']);
    expect([0.5, 0.7].map(shareText)).toEqual(['half of its 28-day strength', '70 % of its 28-day strength']);
    expect(curveSource('R')).toBe('EN 1992-1-1');
    expect(curveSource('III')).toBe('ACI 209R-92, kept moist');
  });
});
