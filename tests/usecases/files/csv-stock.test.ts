import { describe, expect, test } from 'vitest';
import { materialBuyingsById, setMaterialBuying } from '../../../db/stores/supplier-store.ts';
import { setUnits } from '../../../db/stores/units-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import type { MaterialBuying } from '../../../shared/supplier.ts';
import type { UnitSystem } from '../../../shared/units.ts';
import type { UseCaseContext } from '../../../src/usecases/core/context.ts';
import { exportArchive } from '../../../src/usecases/files/export-file.ts';
import { exportTable, tableTemplate } from '../../../src/usecases/files/export-table.ts';
import { loadFile, readUpload, tryFile } from '../../../src/usecases/files/load-file.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/** 7 lb of acid, by definition 0.45359237 kg each: NIST SP 811 (2008), appendix B. The other figures are odd on purpose. */
const measured = () =>
  smallYard({
    materials: [
      ...smallYard().materials,
      { id: 'acid', name: 'Citric acid', unit: 'g', onHand: 3175.14659, pack: 500, leadDays: 4, unitPrice: 0.012 },
      { id: 'sand', name: 'Sand', unit: 'kg', onHand: 1 / 3, minimum: 25, pack: 0.1, unitPrice: 1 / 7 },
      { id: 'mesh', name: 'Mesh', unit: 'm2', onHand: 6.9 },
      { id: 'resin', name: 'Resin', unit: 'qt', onHand: 3.3 },
    ],
  });

const BUYING: MaterialBuying = {
  ...{ kgPerUnit: 1, perTurn: 0.3 },
  breaks: [
    { from: 50, unitPrice: 0.125 },
    { from: 200, unitPrice: 1 / 7 },
  ],
};

const yardIn = async (system: UnitSystem) => {
  const context = await yardContext(measured());
  await context.database.write(async (tx) => {
    await setUnits(tx, system);
    await setMaterialBuying(tx, 'sand', BUYING);
  });
  return context;
};
const fileOf = (text: string, now: string) => {
  const read = readUpload(new TextEncoder().encode(text), now);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
};
const readIn = (context: UseCaseContext, text: string) => loadFile(context, fileOf(text, context.now));
const materialsIn = async ({ database, now }: UseCaseContext) =>
  (await database.read((tx) => loadYardFile(tx, now))).materials;
const material = async (context: UseCaseContext, id: string) =>
  (await materialsIn(context)).find((one) => one.id === id);

describe('the stock of a yard as a CSV', () => {
  test('names the units and the amounts that the pages of the yard show', async () => {
    const lines = (await exportTable(await yardIn('US'), 'stock', 'points')).text.split('\r\n');
    // 3175.14659 g are 112 oz, 500 g 17.636981 oz at 0.340194 for each; 25 kg are 55.115566 lb.
    expect(lines[3]).toBe('Citric acid,oz,112,17.636981,4,0,0.34019428,,,');
    expect(lines[4]).toBe(
      'Sand,lb,0.73487421,0.22046226,,55.115566,0.06479891,,1,from 110.23113 at 0.056699046; from 440.92452 at 0.06479891',
    );
    expect(lines[5]).toMatch(/^Mesh,sq ft,74\.27\d+,10\.76\d+,,0,,,,$/);
    expect(lines[1]).toBe('Fast-setting mortar,bag,20,1,,0,,,,');
    const metric = (await exportTable(await yardIn('metric'), 'stock', 'points')).text.split('\r\n');
    expect(metric[3]).toBe('Citric acid,g,3175.14659,500,4,0,0.012,,,');
    expect(metric[6]).toMatch(/^Resin,l,3\.1229647,/);
  });

  test.each<[UnitSystem, 'points' | 'commas']>([
    ['US', 'points'],
    ['US', 'commas'],
    ['metric', 'points'],
    ['metric', 'commas'],
  ])('out and in again changes nothing to the last bit (%s, %s)', async (system, sign) => {
    const context = await yardIn(system);
    const { text } = await exportTable(context, 'stock', sign);
    const tried = await tryFile(context, fileOf(text, context.now));
    expect(tried).toMatchObject({ ok: false, faults: [{ path: 'same' }] });
    // Beside one that is counted anew, the others stay as they are.
    const before = (await exportArchive(context)).text;
    expect(
      (await readIn(context, text.replace('Fast-setting mortar', 'fast-setting mortar').replace(/(bag[,;])20/, '$121')))
        .ok,
    ).toBe(true);
    const after = (await exportArchive(context)).text;
    expect(JSON.parse(after).materials.slice(1)).toEqual(JSON.parse(before).materials.slice(1));
    expect(JSON.parse(after).materials[0].onHand).toBe(21);
  });

  test.each<[string, string, number]>([
    ['material,in the yard\nCitric acid,4\n', 'acid', 113.3980925],
    ['material,unit,in the yard\nCitric acid,,4\n', 'acid', 113.3980925],
    ['material,unit,in the yard\nCitric acid,oz,4\n', 'acid', 113.3980925],
    // As files were written before the unit followed the yard.
    ['material,unit,in the yard\nCitric acid,g,4\n', 'acid', 4],
    ['material,unit,in the yard\nCitric acid,kg,4\n', 'acid', 4000],
    ['material,unit,in the yard\nCitric acid,g,4 lb\n', 'acid', 1814.36948],
    ['material;unit;in the yard\nSand;lb;2,5\n', 'sand', 1.133980925],
  ])('in a US yard reads %j', async (text, id, onHand) => {
    const context = await yardIn('US');
    const outcome = await readIn(context, text);
    expect(outcome.ok).toBe(true);
    expect((await material(context, id))?.onHand).toBe(onHand);
  });

  test('reads weights and price breaks of the unit that the row names, and leaves all else of buying', async () => {
    const context = await yardIn('metric');
    const read = async (line: string) => readIn(context, `material,weight,price breaks\n${line}\n`);
    const buyingOf = async (id: string) => (await context.database.read(materialBuyingsById)).get(id);
    expect((await read('Fast-setting mortar,25 kg,from 40 at €8.20; 10 at 8.9')).ok).toBe(true);
    const breaks = [
      { from: 10, unitPrice: 8.9 },
      { from: 40, unitPrice: 8.2 },
    ];
    expect(await buyingOf('mortar')).toEqual({ kgPerUnit: 25, breaks });
    expect((await read('Sand,,')).ok).toBe(true);
    expect(await buyingOf('sand')).toEqual({ perTurn: 0.3, breaks: [] });
    const wrong = await read('Fast-setting mortar,heavy,from ten');
    expect(wrong.ok ? [] : wrong.faults.map(({ path }) => path)).toEqual([
      'row 2, column weight',
      'row 2, column price breaks',
    ]);
    // What a form refuses, and what no yard file may hold, is said at its cell and in its words.
    const columns = 'material,unit,in the yard,pack,lead days,price,weight,price breaks';
    const large = '99999999999';
    const limits = await readIn(
      context,
      `${columns}\nFast-setting mortar,bag,1.200,0,9999,${large},${large},from 10 at 9; from 10 at 8\nSlurry,${'b'.repeat(21)},1,1,,,,\n`,
    );
    expect(limits.ok ? [] : limits.faults.map(({ path, message }) => `${path} ${message}`).sort()).toEqual([
      expect.stringContaining('row 2, column in the yard "1.200" has more than two decimals.'),
      'row 2, column lead days is more than 7,300',
      'row 2, column pack has to be more than 0',
      'row 2, column price breaks has two prices from one amount on. Leave one of them out',
      'row 2, column price is more than 1,000,000,000',
      'row 2, column weight is more than 1,000,000,000',
      'row 3, column unit is too long. 20 letters are the most',
    ]);
  });

  test('reads the price of one of the unit that the row names', async () => {
    const context = await yardIn('US');
    expect(
      (await readIn(context, 'material,unit,price,pack\nSand,lb,0.45359237,10\nCitric acid,g,0.02,250\n')).ok,
    ).toBe(true);
    expect(await material(context, 'sand')).toMatchObject({ unitPrice: 1, pack: 4.5359237 });
    expect(await material(context, 'acid')).toMatchObject({ unitPrice: 0.02, pack: 250 });
  });

  test('refuses a unit that measures something else, at the row', async () => {
    const context = await yardIn('US');
    const tried = await tryFile(
      context,
      fileOf('material,unit,in the yard\nSand,qt,4\nFast-setting mortar,lb,4\n', context.now),
    );
    expect(tried.ok ? [] : tried.faults).toEqual([
      { path: 'row 2, column unit', message: 'Sand is counted in lb. Write its amounts so' },
      { path: 'row 3, column unit', message: 'Fast-setting mortar is counted in bag. Write its amounts so' },
    ]);
  });

  test.each<[UnitSystem, string, number]>([
    ['US', 'sq ft', 80],
    ['metric', 'm2', 7.5],
  ])('the template of a %s yard goes in as it stands', async (system, unit, onHand) => {
    const context = await yardIn(system);
    const { text } = await tableTemplate(context, 'stock', 'points');
    expect((await readIn(context, text)).ok).toBe(true);
    expect(await material(context, 'example-mesh')).toMatchObject({ unit, onHand });
  });
});

describe('what is sold in lengths, in a CSV', () => {
  const rods = (count: string) => `material,in the yard\nRod 12 mm,${count}\n`;

  test('is counted in whole ones: a share of one is a fault of its cell', async () => {
    const context = await yardContext(smallYard());
    const refused = await readIn(context, rods('2.5'));
    expect(refused.ok ? [] : refused.faults.map(({ message }) => message)).toEqual([
      expect.stringContaining('count whole ones'),
    ]);
    expect((await readIn(context, rods('2'))).ok).toBe(true);
    expect((await material(context, 'rod'))?.onHand).toBe(2);
  });

  test('stays what it is where the book has a share of one from before', async () => {
    const materials = smallYard().materials.map((one) => (one.id === 'rod' ? { ...one, onHand: 2.5 } : one));
    const context = await yardContext(smallYard({ materials }));
    expect((await readIn(context, `material,in the yard,supplier\nRod 12 mm,2.5,Merchant\n`)).ok).toBe(true);
  });
});
