import { describe, expect, test } from 'vitest';
import { sizesOfCastings } from '../../../db/stores/casting-size-store.ts';
import { guessesOfYard, typedOf } from '../../../db/stores/figure-store.ts';
import { setUnits } from '../../../db/stores/units-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import type { UseCaseContext } from '../../../src/usecases/core/context.ts';
import type { FormFields } from '../../../src/usecases/typed/form-fields.ts';
import { addCastings, editCasting } from '../../../src/usecases/yard/edit-casting.ts';
import { addToStockBook } from '../../../src/usecases/yard/edit-material.ts';
import { showYardCastings } from '../../../src/usecases/yard/show-yard-castings.ts';
import { archiveWithoutLog, refusedFor, savedAnyway } from '../../support/saving.ts';
import { yardContext } from '../../support/yard-context.ts';

const THREE = { lengths: '600, 750 and 1200', name: '', mix: 'thin', height: '200', thickness: '35', kg: '' };

const castingsIn = async ({ database, now }: UseCaseContext) =>
  (await database.read((tx) => loadYardFile(tx, now))).castings;
const textsOf = async (context: UseCaseContext, id: string) => {
  const casting = (await showYardCastings(context)).castings.find((one) => one.id === id);
  if (!casting) throw new Error(`No ${id} is cast.`);
  return casting.texts;
};
const guessed = async ({ database }: UseCaseContext, id: string) =>
  (await database.read(guessesOfYard)).filter((one) => one.id === id).map(({ figure }) => figure);

describe('what is added to what is cast', () => {
  test('in several lengths is a piece each, last in the list, with its size and guesses', async () => {
    const context = await yardContext();
    await savedAnyway(context, addCastings(THREE));
    expect((await castingsIn(context)).map(({ id, name, kg }) => [id, name, kg])).toEqual([
      ['panel-900', 'Panel 900', 13.6],
      ['panel-600', 'Panel 600', 9],
      ['panel-750', 'Panel 750', 11.3],
      ['panel-1200', 'Panel 1200', 18.1],
    ]);
    const sizes = await context.database.read(sizesOfCastings);
    expect(sizes.map(({ casting, length }) => [casting, length]).sort()).toEqual([
      ['panel-1200', { typed: '1200', mm: 1200 }],
      ['panel-600', { typed: '600', mm: 600 }],
      ['panel-750', { typed: '750', mm: 750 }],
    ]);
    expect(await guessed(context, 'panel-750')).toContain('kg');
  });

  test('goes by a name before each length, or by the name alone', async () => {
    const context = await yardContext();
    await savedAnyway(context, addCastings({ ...THREE, lengths: '300; 400', name: 'Coping' }));
    await savedAnyway(context, addCastings({ ...THREE, lengths: '', name: 'Cap', height: '', thickness: '', kg: '3' }));
    expect((await castingsIn(context)).slice(1).map(({ name }) => name)).toEqual(['Coping 300', 'Coping 400', 'Cap']);
    expect((await context.database.read(sizesOfCastings)).map(({ casting }) => casting)).not.toContain('cap');
  });

  test('gets an id that no other piece has', async () => {
    const context = await yardContext();
    const piece = { ...THREE, lengths: '', height: '', thickness: '', kg: '3' };
    await savedAnyway(context, addCastings({ ...piece, name: 'Panel-900' }));
    expect((await castingsIn(context)).map(({ id }) => id)).toEqual(['panel-900', 'panel-900-2']);
  });

  test('is all added or nothing: one length that is wrong keeps the others out', async () => {
    const context = await yardContext();
    expect(await refusedFor(context, addCastings({ ...THREE, lengths: '600, 900' }))).toEqual([
      'lengths: There is a Panel 900 already.',
    ]);
    // A panel of 3 m is heavier than a bag makes.
    expect(await refusedFor(context, addCastings({ ...THREE, lengths: '600, 3000' }))).toEqual([
      'kg: That is more than the largest batch of its mix.',
    ]);
    expect(await refusedFor(context, addCastings({ ...THREE, kg: '9' }))).toEqual([
      'kg: Several lengths weigh different amounts. Leave this empty, and correct each of them later.',
    ]);
    expect(await castingsIn(context)).toHaveLength(1);
    expect(await context.database.read(sizesOfCastings)).toEqual([]);
    expect(await context.database.read(guessesOfYard)).toEqual([]);
  });
});

describe('a piece that is edited', () => {
  const withPanel = async () => {
    const context = await yardContext();
    const contents = { 'part-0': 'mortar', 'partQuantity-0': '1/4', 'cut-0': 'rod', 'cutLength-0': '12 in' };
    await savedAnyway(context, addCastings({ ...THREE, lengths: '75 cm', ...contents, 'cutCount-0': '2' }));
    return context;
  };

  test('and left as it was shown is the same yard, sizes and guesses and all', async () => {
    const context = await withPanel();
    for (const system of ['metric', 'US'] as const) {
      await context.database.write((tx) => setUnits(tx, system));
      const before = await archiveWithoutLog(context);
      await savedAnyway(context, editCasting('panel-75-cm', await textsOf(context, 'panel-75-cm')));
      expect(await archiveWithoutLog(context)).toEqual(before);
    }
  });

  test('shows its contents and its weight again as they were typed', async () => {
    const context = await withPanel();
    const texts = await textsOf(context, 'panel-75-cm');
    expect(texts).toMatchObject({ length: '75 cm', 'cutLength-0': '12 in', 'partQuantity-0': '0.25' });
    await savedAnyway(
      context,
      editCasting('panel-75-cm', { ...texts, kg: '25 lb', 'cut-0': '', 'cutLength-0': '', 'cutCount-0': '' }),
    );
    expect(await textsOf(context, 'panel-75-cm')).toMatchObject({ kg: '25 lb' });
    expect((await castingsIn(context)).at(-1)?.cuts).toEqual([]);
  });

  test('has no guess where somebody said another figure, and keeps those left alone', async () => {
    const context = await withPanel();
    const texts = await textsOf(context, 'panel-75-cm');
    await savedAnyway(context, editCasting('panel-75-cm', { ...texts, kg: '12', fillMinutes: '9' }));
    expect(await guessed(context, 'panel-75-cm')).toEqual(['cleanMinutes', 'prepMinutes', 'stripMinutes']);
    // An emptied field is guessed anew.
    await savedAnyway(
      context,
      editCasting('panel-75-cm', { ...(await textsOf(context, 'panel-75-cm')), fillMinutes: '' }),
    );
    expect(await guessed(context, 'panel-75-cm')).toContain('fillMinutes');
    expect((await castingsIn(context)).at(-1)?.fillMinutes).toBe(6);
  });

  test('without its size has none, and undone has it back', async () => {
    const context = await withPanel();
    const before = await context.database.read(sizesOfCastings);
    const none = { ...(await textsOf(context, 'panel-75-cm')), length: '', height: '', thickness: '' };
    const change = await savedAnyway(context, editCasting('panel-75-cm', none));
    expect(await context.database.read(sizesOfCastings)).toEqual([]);
    expect((await undoChange(context, change)).ok).toBe(true);
    expect(await context.database.read(sizesOfCastings)).toEqual(before);
  });

  test('can be called otherwise, and stays what moulds and kits mean', async () => {
    const context = await yardContext();
    const texts = await textsOf(context, 'panel-900');
    await savedAnyway(context, editCasting('panel-900', { ...texts, name: 'Long panel' }));
    const yard = await context.database.read((tx) => loadYardFile(tx, context.now));
    expect(yard.castings.map(({ id, name }) => [id, name])).toEqual([['panel-900', 'Long panel']]);
    expect(yard.kits[0]?.pieces).toEqual([{ casting: 'panel-900', count: 2 }]);
  });

  test('that is gone is said to be', async () => {
    const context = await yardContext();
    expect(await refusedFor(context, editCasting('none', {}))).toEqual([
      'name: It is not among what is cast any more.',
    ]);
  });

  test('from another mix has to fit its batches', async () => {
    const context = await yardContext();
    const texts = await textsOf(context, 'panel-900');
    expect(await refusedFor(context, editCasting('panel-900', { ...texts, kg: '28 kg' }))).toEqual([
      'kg: That is more than the largest batch of its mix.',
    ]);
    expect(await context.database.read((tx) => typedOf(tx, { kind: 'casting', id: 'panel-900' }))).toEqual({});
  });
});

describe('what is cut from sheets for a piece', () => {
  const MESH = { name: 'Mesh', unit: 'm2', sheetWidthMm: '1000', sheetLengthMm: '6000', meshMm: '25' };
  const sheetsIn = async (context: UseCaseContext) => (await castingsIn(context))[0]?.sheets;
  const edited = async (context: UseCaseContext, typed: FormFields) =>
    editCasting('panel-900', { ...(await textsOf(context, 'panel-900')), ...typed });

  test('is kept, shown again, and undone', async () => {
    const context = await yardContext();
    await savedAnyway(context, addToStockBook(MESH));
    const typed = { 'sheet-0': 'mesh', 'sheetSizes-0': '175 by 875, 2 of 50 by 100', 'sheetTurn-0': 'no' };
    const change = await savedAnyway(context, await edited(context, typed));
    expect(await sheetsIn(context)).toEqual([
      { material: 'mesh', widthMm: 175, lengthMm: 875, count: 1, mayTurn: false },
      { material: 'mesh', widthMm: 50, lengthMm: 100, count: 2, mayTurn: false },
    ]);
    expect(await textsOf(context, 'panel-900')).toMatchObject({
      'sheetSizes-0': '175 mm by 875 mm, 2 of 50 mm by 100 mm',
      'sheetTurn-0': 'no',
    });
    await undoChange(context, change);
    expect(await sheetsIn(context)).toBeUndefined();
  });

  test('has to go on a sheet of something that comes as sheets', async () => {
    const context = await yardContext();
    await savedAnyway(context, addToStockBook(MESH));
    const refused = async (typed: FormFields) => refusedFor(context, await edited(context, typed));
    expect(await refused({ 'sheet-0': 'mesh', 'sheetSizes-0': '1100 by 1200' })).toEqual([
      'sheetSizes-0: It is larger than a sheet of it.',
    ]);
    expect(await refused({ 'sheet-0': 'rod', 'sheetSizes-0': '100 by 100' })).toEqual([
      'sheet-0: It does not come as sheets: see its page in stock.',
    ]);
    expect(await refused({ 'sheet-0': 'mesh' })).toEqual(['sheetSizes-0: How large is it?']);
  });
});
