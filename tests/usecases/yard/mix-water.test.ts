import { describe, expect, test } from 'vitest';
import { addGuesses, guessesOfYard, setTyped } from '../../../db/stores/figure-store.ts';
import { setMixWater, watersOfMixes } from '../../../db/stores/mix-water-store.ts';
import { exportArchive, exportYard } from '../../../src/usecases/files/export-file.ts';
import { loadFile, readUpload } from '../../../src/usecases/files/load-file.ts';
import { waterOf, watersOfYard } from '../../../src/usecases/yard/mix-water.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

test.each<[number | undefined, string | undefined, object]>([
  [4.7, undefined, { litres: 4.7, note: null }],
  // An amount that was said since counts, whatever the words were.
  [4.7, '5 l', { litres: 4.7, note: null }],
  [undefined, '4,5 Liter', { litres: 4.5, note: null }],
  [undefined, '750 ml', { litres: 0.75, note: null }],
  [undefined, 'until it flows', { litres: null, note: 'until it flows' }],
  [undefined, '0 l', { litres: null, note: '0 l' }],
  [undefined, undefined, { litres: null, note: null }],
])('litres %s and the words %s are %o', (litres, words, water) => {
  expect(waterOf(litres, words, 'metric')).toEqual(water);
});

describe('the water of a mix', () => {
  const watered = async () => {
    const context = await yardContext();
    await context.database.write(async (tx) => {
      await setMixWater(tx, 'thin', 4.7);
      await setTyped(tx, { kind: 'mix', id: 'thin', figure: 'water' }, '4.7 l');
      await addGuesses(tx, [{ kind: 'mix', id: 'thin', figure: 'water' }]);
    });
    return context;
  };
  const readIn = async (context: Awaited<ReturnType<typeof watered>>, text: string) => {
    const file = readUpload(new TextEncoder().encode(text), context.now);
    if (!file.ok) throw new Error(JSON.stringify(file.faults));
    return loadFile(context, file.value);
  };

  test('goes with the archive and comes out of it the same', async () => {
    const text = (await exportArchive(await watered())).text;
    expect(JSON.parse(text).mixes[0].waterLitresPerBag).toBe(4.7);
    const other = await yardContext(smallYard({ mixes: [], castings: [], moulds: [], kits: [], orders: [] }));
    expect((await readIn(other, text)).ok).toBe(true);
    expect((await exportArchive(other)).text).toBe(text);
    expect((await other.database.read(watersOfYard)).get('thin')).toEqual({ litres: 4.7, note: null });
  });

  test('is in no yard file, and stays with the mix that a yard file keeps', async () => {
    const context = await watered();
    const text = (await exportYard(context)).text;
    expect(text).not.toContain('water');
    expect((await readIn(context, text.replace('"mixMinutes": 10', '"mixMinutes": 12'))).ok).toBe(true);
    expect((await context.database.read(watersOfMixes)).get('thin')).toBe(4.7);
    expect((await context.database.read(guessesOfYard)).map(({ figure }) => figure)).toEqual(['water']);
    const without = smallYard({ mixes: [], castings: [], moulds: [], kits: [], orders: [] });
    expect((await readIn(context, JSON.stringify(without))).ok).toBe(true);
    expect((await context.database.read(watersOfMixes)).size).toBe(0);
  });

  test('that changes is named when an archive is read in', async () => {
    const [context, other] = [await watered(), await watered()];
    await other.database.write((tx) => setMixWater(tx, 'thin', 5));
    const outcome = await readIn(context, (await exportArchive(other)).text);
    expect(outcome.ok && outcome.value.value.differences).toContainEqual({
      ...{ what: 'Mixes', added: [], gone: [] },
      changed: [{ name: 'Thin panel mix', figures: [{ figure: 'water to a bag', from: '4.7 l', to: '5 l' }] }],
    });
  });
});
