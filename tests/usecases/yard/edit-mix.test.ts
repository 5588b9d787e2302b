import { describe, expect, test } from 'vitest';
import { typedOf } from '../../../db/stores/figure-store.ts';
import { setUnits } from '../../../db/stores/units-store.ts';
import type { UseCaseContext } from '../../../src/usecases/core/context.ts';
import { addOneMix, editMix } from '../../../src/usecases/yard/edit-mix.ts';
import { showYardMixes } from '../../../src/usecases/yard/show-yard-mixes.ts';
import { savedAnyway } from '../../support/saving.ts';
import { yardContext } from '../../support/yard-context.ts';

const textsOf = async (context: UseCaseContext, id: string) =>
  (await showYardMixes(context)).mixes.find((one) => one.id === id)?.texts ?? {};
const typedIn = ({ database }: UseCaseContext, id: string) => database.read((tx) => typedOf(tx, { kind: 'mix', id }));

describe('what is kept of a mix as it was typed', () => {
  test('is nothing of a preset that was left as it stood: a yard in other units shows it in these', async () => {
    const context = await yardContext();
    const preset = (await showYardMixes(context)).presets.find(({ key }) => key === 'rapid');
    await savedAnyway(context, addOneMix({ ...preset?.texts, from: 'rapid', bagName: '' }));
    expect(await typedIn(context, 'fast-setting-mix')).toEqual({});
    await context.database.write((tx) => setUnits(tx, 'US'));
    // 27.2 kg are 59.97 lb, 4.7 l 4.966 qt, 5 °C 41 °F.
    expect(await textsOf(context, 'fast-setting-mix')).toMatchObject({
      ...{ yieldKgPerBag: '60 lb', water: '4.97 qt', minCelsius: '41 °F', coldCelsius: '50 °F' },
    });
  });

  test('is what names its unit, and the temperatures of the two days', async () => {
    const context = await yardContext();
    const typed = { yieldKgPerBag: '60 lb', water: '5 qt', coldCelsius: '8', 'partQuantity-0': '1' };
    await savedAnyway(context, editMix('thin', { ...(await textsOf(context, 'thin')), ...typed, coldMinutes: '200' }));
    expect(await typedIn(context, 'thin')).toEqual({ yieldKgPerBag: '60 lb', water: '5 qt', coldCelsius: '8 °C' });
    await savedAnyway(context, editMix('thin', { ...(await textsOf(context, 'thin')), yieldKgPerBag: '28' }));
    expect(await typedIn(context, 'thin')).toEqual({ water: '5 qt', coldCelsius: '8 °C' });
  });
});
