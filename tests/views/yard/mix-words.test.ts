import { describe, expect, test } from 'vitest';
import { contentsText, fitText, mixedText, stripText, yieldText } from '../../../views/yard/mix-words.ts';

describe('how a mix hardens', () => {
  test('is told in minutes of steps of five, in half hours and in days, and never too short', () => {
    expect(stripText({ at: '10 °C', minutes: 137 })).toBe('after 140 minutes at 10 °C');
    // 2,326 minutes are 38 hours and 46 minutes.
    expect(stripText({ at: '10 °C', minutes: 2326 })).toBe('after 39 hours at 10 °C');
    expect(stripText({ at: '20 °C', minutes: 241 })).toBe('after 4.5 hours at 20 °C');
    expect(fitText({ cureHours: 72, reference: '20 °C' })).toBe('after 3 days at 20 °C');
    expect(fitText({ cureHours: 50, reference: '68 °F' })).toBe('after 50 hours at 68 °F');
    expect(fitText({ cureHours: 0, reference: '68 °F' })).toBe('once it is stripped');
  });
});

test('what a bag makes, how it is mixed, and what goes in', () => {
  const fills = [
    { name: 'Panel 900', count: 2 },
    { name: 'Panel 600', count: 3 },
  ];
  expect(yieldText({ yieldText: '27.2 kg', fills })).toBe('27.2 kg: 2 of Panel 900, or 3 of Panel 600');
  expect(mixedText({ maxBags: 2, crew: 1, mixMinutes: 10 })).toBe('10 minutes, up to 2 bags at once, by 1 person');
  const contents = [{ name: 'Fast-setting mortar', quantity: 1, unit: 'bag' }];
  const texts = { water: '4.7 l' };
  expect(contentsText({ contents, texts, waterNote: null })).toBe('1 bag of Fast-setting mortar and 4.7 l of water');
  expect(contentsText({ contents: [], texts, waterNote: null })).toBe('not recorded, only 4.7 l of water');
  expect(contentsText({ contents, texts, waterNote: 'by eye' })).toBe(
    '1 bag of Fast-setting mortar. Water, as noted: by eye',
  );
});
