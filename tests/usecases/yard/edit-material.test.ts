import { describe, expect, test } from 'vitest';
import { rewriteCasting } from '../../../db/stores/casting-store.ts';
import { guessesOfYard, typedOf } from '../../../db/stores/figure-store.ts';
import { stockBook } from '../../../db/stores/stock-store.ts';
import { setUnits } from '../../../db/stores/units-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import type { UseCaseContext } from '../../../src/usecases/core/context.ts';
import { addToStockBook, editMaterial } from '../../../src/usecases/yard/edit-material.ts';
import { showYardStock } from '../../../src/usecases/yard/show-yard-stock.ts';
import { refusedFor, savedAnyway } from '../../support/saving.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const SAND = { name: 'Sand', unit: 'kg', onHand: '55 lb', minimum: '10', leadDays: '2', packPrice: '4.50', pack: '25' };
const materialIn = async ({ database, now }: UseCaseContext, id: string) =>
  (await database.read((tx) => loadYardFile(tx, now))).materials.find((one) => one.id === id);
const textsOf = async (context: UseCaseContext, id: string) =>
  (await showYardStock(context)).materials.find((one) => one.id === id)?.texts ?? {};
const typedIn = ({ database }: UseCaseContext, id: string) =>
  database.read((tx) => typedOf(tx, { kind: 'material', id }));

describe('a material that is added', () => {
  test('is kept in its unit, and shown again as it was typed', async () => {
    const context = await yardContext();
    await savedAnyway(context, addToStockBook(SAND));
    // 1 lb = 0.45359237 kg, by definition: NIST SP 811 (2008), appendix B.
    expect(await materialIn(context, 'sand')).toEqual({
      ...{ id: 'sand', name: 'Sand', unit: 'kg', onHand: 24.94758035, pack: 25, minimum: 10, leadDays: 2 },
      ...{ unitPrice: 0.18, kerfMm: 0 },
    });
    expect(await textsOf(context, 'sand')).toMatchObject({ onHand: '55 lb', minimum: '10', packPrice: '4.50' });
    expect(await typedIn(context, 'sand')).toEqual({ onHand: '55 lb' });
  });
});

describe('a material that is edited', () => {
  test('and left as it was shown keeps nothing as typed that nobody typed', async () => {
    const context = await yardContext();
    await savedAnyway(context, editMaterial('rod', await textsOf(context, 'rod')));
    expect(await typedIn(context, 'rod')).toEqual({});
    await context.database.write((tx) => setUnits(tx, 'US'));
    // 3000 mm are 9 ft 10 1/8 in, to the eighth of an inch.
    expect((await textsOf(context, 'rod')).stickMm).toMatch(/^9 ft 10/);
    expect((await materialIn(context, 'rod'))?.stickMm).toBe(3000);
  });

  test('keeps what was typed once, also while other figures change, until that figure does', async () => {
    const context = await yardContext();
    await savedAnyway(context, addToStockBook(SAND));
    await savedAnyway(context, editMaterial('sand', { ...(await textsOf(context, 'sand')), minimum: '12' }));
    expect(await textsOf(context, 'sand')).toMatchObject({ onHand: '55 lb', minimum: '12' });
    await savedAnyway(context, editMaterial('sand', { ...(await textsOf(context, 'sand')), onHand: '30' }));
    expect(await textsOf(context, 'sand')).toMatchObject({ onHand: '30' });
    expect(await typedIn(context, 'sand')).toEqual({});
  });

  test('stays in its unit while mixes and kits count by it', async () => {
    const context = await yardContext();
    await savedAnyway(context, addToStockBook(SAND));
    await savedAnyway(context, editMaterial('sand', { ...(await textsOf(context, 'sand')), unit: 'bag', onHand: '2' }));
    expect(await materialIn(context, 'sand')).toMatchObject({ unit: 'bag', onHand: 2 });
    const rod = await textsOf(context, 'rod');
    expect(await refusedFor(context, editMaterial('rod', { ...rod, unit: 'm' }))).toEqual([
      'unit: It stays counted in stick, because it goes into 1 kit (Pair of panels) by that.',
    ]);
  });

  test('that is cut cannot become shorter than what is cut from it, nor no length at all', async () => {
    const context = await yardContext();
    const rod = await textsOf(context, 'rod');
    expect(await refusedFor(context, editMaterial('rod', { ...rod, stickMm: '299' }))).toEqual([
      'stickMm: A kit needs a longer piece than that, cut from it.',
    ]);
    expect(await refusedFor(context, editMaterial('rod', { ...rod, stickMm: '' }))).toEqual([
      'stickMm: Kits need pieces that are cut from it. How long is one?',
    ]);
    expect(await context.database.read(guessesOfYard)).toEqual([]);
  });

  test('that is cut has whole ones, and offcuts by their lengths', async () => {
    const context = await yardContext();
    const rod = await textsOf(context, 'rod');
    await savedAnyway(context, editMaterial('rod', { ...rod, onHand: '2', offcuts: '2232.5, 2 × 40 cm' }));
    const offcuts = [
      { lengthMm: 2232.5, count: 1 },
      { lengthMm: 400, count: 2 },
    ];
    expect(await materialIn(context, 'rod')).toMatchObject({ onHand: 2, offcuts });
    await context.database.write((tx) => setUnits(tx, 'US'));
    const shown = await textsOf(context, 'rod');
    expect(shown.offcuts).toBe('7 ft 3 7/8 in, 2 × 1 ft 3 3/4 in');
    await savedAnyway(context, editMaterial('rod', { ...shown, name: 'Rod' }));
    expect(await materialIn(context, 'rod')).toMatchObject({ name: 'Rod', offcuts });
    expect(await refusedFor(context, editMaterial('rod', { ...shown, onHand: '1.5', offcuts: '12 ft' }))).toEqual([
      'onHand: Write whole ones. What is left of an opened one stands under Offcuts.',
      'offcuts: A whole one is 9 ft 10 1/8 in. An offcut is shorter.',
    ]);
  });

  test('that is cut no more has no offcuts', async () => {
    const context = await yardContext(smallYard({ kits: [], orders: [] }));
    const rod = await textsOf(context, 'rod');
    await savedAnyway(context, editMaterial('rod', { ...rod, offcuts: '700' }));
    await savedAnyway(context, editMaterial('rod', { ...(await textsOf(context, 'rod')), stickMm: '' }));
    expect(await materialIn(context, 'rod')).not.toHaveProperty('offcuts');
  });
});

describe('a material that comes as sheets', () => {
  const MESH = {
    name: 'Mesh',
    unit: 'm2',
    sheetWidthMm: '1 m',
    sheetLengthMm: '6 m',
    meshMm: '25',
    rests: '600 by 900',
  };

  test('has their size, the openings and the rests that are there', async () => {
    const context = await yardContext();
    await savedAnyway(context, addToStockBook(MESH));
    expect(await materialIn(context, 'mesh')).toMatchObject({
      ...{ sheetWidthMm: 1000, sheetLengthMm: 6000, meshMm: 25 },
      rests: [{ widthMm: 600, lengthMm: 900, count: 1 }],
    });
    expect(await textsOf(context, 'mesh')).toMatchObject({ sheetWidthMm: '1 m', rests: '600 mm by 900 mm' });
    const none = { sheetWidthMm: '', sheetLengthMm: '', meshMm: '', rests: '' };
    await savedAnyway(context, editMaterial('mesh', { ...(await textsOf(context, 'mesh')), ...none }));
    const after = await materialIn(context, 'mesh');
    expect([after?.sheetWidthMm, after?.meshMm, after?.rests]).toEqual([undefined, undefined, undefined]);
  });

  test('says what is missing of it, and is no stick', async () => {
    const context = await yardContext();
    const refused = (more: object) => refusedFor(context, addToStockBook({ ...MESH, ...more }));
    expect(await refused({ sheetLengthMm: '' })).toEqual(['sheetLengthMm: How long is a sheet, or a roll?']);
    expect(await refused({ sheetWidthMm: '', sheetLengthMm: '' })).toEqual([
      'sheetWidthMm: How wide is a sheet, or a roll?',
    ]);
    expect(await refused({ stickMm: '3 m' })).toEqual(['stickMm: It is sold as lengths or as sheets, not as both.']);
    expect(await refused({ rests: '600' })).toEqual([
      'rests: Width by length, as in 1000 by 900 mm, 2 of 300 by 400 mm.',
    ]);
  });
});

describe('mesh that is counted in whole sheets from now on', () => {
  const SHEETS = {
    ...{ name: 'Mesh', unit: 'm2', onHand: '2.5', pack: '1', sheetWidthMm: '1 m', sheetLengthMm: '6 m', meshMm: '25' },
    rests: '600 by 900',
  };
  const cut = { material: 'mesh', widthMm: 175, lengthMm: 875, count: 1, mayTurn: true };
  /** Of the yard's one panel. */
  const withMesh = async (sheets: (typeof cut)[] | undefined) => {
    const context = await yardContext();
    await savedAnyway(context, addToStockBook(SHEETS));
    await context.database.write(async (tx) => {
      const [panel] = (await loadYardFile(tx, context.now)).castings;
      const { sheets: _none, ...rest } = panel!;
      await rewriteCasting(tx, {
        ...{ ...rest, perPiece: [{ material: 'mesh', quantity: 0.16 }] },
        ...(sheets ? { sheets } : {}),
      });
    });
    return context;
  };
  const turned = async (context: UseCaseContext, more: Record<string, string>) =>
    editMaterial('mesh', {
      ...(await textsOf(context, 'mesh')),
      inSheets: 'sheets',
      unit: 'roll',
      onHand: '1',
      ...more,
    });

  test('is what panels cut of it, and no square metres beside', async () => {
    const context = await withMesh([cut]);
    await savedAnyway(context, await turned(context, {}));
    expect(await materialIn(context, 'mesh')).toMatchObject({ unit: 'roll', onHand: 1, inSheets: true });
    const { castings } = await context.database.read((tx) => loadYardFile(tx, context.now));
    expect(castings[0]).toMatchObject({ perPiece: [], sheets: [cut] });
    const lines = (await context.database.read((tx) => stockBook(tx))).filter(({ material }) => material === 'mesh');
    expect(lines.map(({ kind, quantity, widthMm }) => [kind, quantity, widthMm ?? null])).toEqual([
      ['opening', 2.5, null],
      ['opening', 1, 600],
      ['corrected', -2.5, null],
      ['corrected', 1, null],
    ]);
    expect(await textsOf(context, 'mesh')).toMatchObject({ inSheets: 'sheets', rests: '600 mm by 900 mm' });
  });

  test('is refused while a panel does not say how large its piece is, by a measure, or in shares', async () => {
    const context = await withMesh(undefined);
    expect(await refusedFor(context, await turned(context, {}))).toEqual([
      expect.stringMatching(/^inSheets: .* takes m2 of it\. Say there first how large its piece of a sheet is\.$/),
    ]);
    const known = await withMesh([cut]);
    expect(await refusedFor(known, await turned(known, { unit: 'm2' }))).toEqual([
      'unit: Plans count whole ones then: write sheet, or roll.',
    ]);
    expect(await refusedFor(known, await turned(known, { onHand: '1.5' }))).toEqual([
      'onHand: Write whole ones. What is left of an opened one stands under Rests.',
    ]);
  });
});
