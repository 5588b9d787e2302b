import { describe, expect, test } from 'vitest';
import { mixRate } from '../../../src/engine/begin/mix-rate.ts';
import { newId } from '../../../src/usecases/core/new-id.ts';
import { mixTexts, stripMinutesAt } from '../../../src/usecases/typed/mix-figures.ts';
import { PRESETS } from '../../../src/usecases/yard/mix-presets.ts';
import { smallYard } from '../../support/small-yard.ts';

const [thin] = smallYard().mixes;

describe('the two days of a mix', () => {
  test.each([
    [10, 180, 20, 90],
    [5, 240, 25, 60],
    [12.5, 2880, 21, 1440],
  ])('come back as they were said: %d °C %d minutes, %d °C %d minutes', (cold, slow, warm, quick) => {
    const rate = mixRate({ celsius: cold, minutes: slow }, { celsius: warm, minutes: quick }, 20);
    if (!rate.ok) throw new Error(rate.reason);
    const mix = { ...thin!, ...rate, referenceCelsius: 20 };
    // The rate is kept in whole minutes at 20 °C and whole kelvin: at most one such minute away, as seen from each day.
    const minuteThen = (minutes: number) => Math.ceil(minutes / rate.demouldMinutes);
    for (const [celsius, minutes] of [[cold, slow] as const, [warm, quick] as const]) {
      const back = stripMinutesAt(mix, celsius);
      expect(back).toBeGreaterThanOrEqual(minutes);
      expect(back - minutes).toBeLessThanOrEqual(minuteThen(minutes));
    }
  });

  test('are those that were typed last, in the units of the yard', () => {
    const writing = { system: 'US', typed: { coldCelsius: '41 F' }, waterLitres: null, wetCureHours: 0 } as const;
    const texts = mixTexts(thin!, { ...writing, materials: [] });
    expect(texts).toMatchObject({ coldCelsius: '41 F', warmCelsius: '68 °F', warmMinutes: '75' });
  });

  test('of the fast-setting mix are 180 minutes at 10 °C and 90 at 20 °C', () => {
    const { mix } = PRESETS.rapid;
    expect([stripMinutesAt(mix, 10), stripMinutesAt(mix, 20)]).toEqual([180, 90]);
  });
});

test('an id is made from the name, and is nobody else’s', () => {
  expect(newId('Sand 0-2 mm', new Set(['sand-0-2-mm']))).toBe('sand-0-2-mm-2');
  expect(newId('砂', new Set())).toBe('one');
  expect(newId('砂', new Set(), 'material')).toBe('material');
  expect(newId('New', new Set())).toBe('new-2');
});
