import { describe, expect, test } from 'vitest';
import { hardensLine } from '../../../views/yard/mix-words.ts';

const strips = (...minutes: number[]) => minutes.map((one, index) => ({ at: `${10 + 10 * index} °C`, minutes: one }));

describe('how a mix hardens', () => {
  test('is told in minutes of steps of five, in half hours and in days, and never too short', () => {
    expect(hardensLine({ strips: strips(137, 75), cureHours: 72, reference: '20 °C' })).toBe(
      'Can be stripped after 140 minutes at 10 °C and 75 minutes at 20 °C. Fit to go out, by plan, after 3 days at 20 °C.',
    );
    // 2,326 minutes are 38 hours and 46 minutes.
    expect(hardensLine({ strips: strips(2326, 241), cureHours: 24, reference: '20 °C' })).toBe(
      'Can be stripped after 39 hours at 10 °C and 4.5 hours at 20 °C. Fit to go out, by plan, after 24 hours at 20 °C.',
    );
    expect(hardensLine({ strips: strips(61), cureHours: 50, reference: '68 °F' })).toContain('after 50 hours at 68 °F');
    expect(hardensLine({ strips: strips(61), cureHours: 0, reference: '68 °F' })).toMatch(/once it is stripped\.$/);
  });
});
