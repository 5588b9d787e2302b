import { describe, expect, test } from 'vitest';
import { typedOf } from '../../../db/stores/figure-store.ts';
import { setKitSize, sizesOfKits } from '../../../db/stores/kit-store.ts';
import { setUnits } from '../../../db/stores/units-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import type { UseCaseContext } from '../../../src/usecases/core/context.ts';
import { addOneKit, editKit } from '../../../src/usecases/yard/edit-kit.ts';
import { showYardKits } from '../../../src/usecases/yard/show-yard-kits.ts';
import { archiveWithoutLog, refusedFor, savedAnyway } from '../../support/saving.ts';
import { yardContext } from '../../support/yard-context.ts';

const FOUR = { name: 'Four of them', 'piece-0': 'panel-900', 'pieceCount-0': '4', packMinutes: '15' };
const kitsIn = async ({ database, now }: UseCaseContext) => (await database.read((tx) => loadYardFile(tx, now))).kits;
const textsOf = async (context: UseCaseContext, id: string) => {
  const kit = (await showYardKits(context)).kits.find((one) => one.id === id);
  if (!kit) throw new Error(`There is no kit ${id}.`);
  return kit.texts;
};
const mm = (length: number) => ({ typed: String(length), mm: length });
const ROW = { shape: 'row', faces: 'outside', courses: 1, length: mm(1800), ground: mm(0) } as const;

describe('a kit that is added', () => {
  test('is last in the list, under an id that no other has', async () => {
    const context = await yardContext();
    await savedAnyway(context, addOneKit(FOUR));
    await savedAnyway(context, addOneKit({ ...FOUR, name: 'Pair' }));
    expect((await kitsIn(context)).map(({ id, name }) => [id, name])).toEqual([
      ['pair', 'Pair of panels'],
      ['four-of-them', 'Four of them'],
      ['pair-2', 'Pair'],
    ]);
  });

  test('keeps what was typed for its pins, and goes again when it is undone', async () => {
    const context = await yardContext();
    const before = await kitsIn(context);
    const pins = { 'cut-0': 'rod', 'cutLength-0': '1 ft', 'cutCount-0': '4' };
    const change = await savedAnyway(context, addOneKit({ ...FOUR, ...pins }));
    expect(await textsOf(context, 'four-of-them')).toMatchObject({ ...FOUR, ...pins });
    expect((await undoChange(context, change)).ok).toBe(true);
    expect(await kitsIn(context)).toEqual(before);
    expect(await context.database.read((tx) => typedOf(tx, { kind: 'kit', id: 'four-of-them' }))).toEqual({});
  });

  test('of what a yard file may not hold is refused, and nothing is written', async () => {
    const context = await yardContext();
    const long = { 'cut-0': 'rod', 'cutLength-0': '3001', 'cutCount-0': '1' };
    expect(await refusedFor(context, addOneKit({ ...FOUR, ...long }))).toEqual([
      'cutLength-0: That is longer than one of it is sold.',
    ]);
    expect(await kitsIn(context)).toHaveLength(1);
  });
});

describe('a kit that is edited', () => {
  test('and left as it was shown is the same yard', async () => {
    const context = await yardContext();
    await context.database.write((tx) => setKitSize(tx, 'pair', ROW));
    for (const system of ['metric', 'US'] as const) {
      await context.database.write((tx) => setUnits(tx, system));
      const before = await archiveWithoutLog(context);
      await savedAnyway(context, editKit('pair', await textsOf(context, 'pair')));
      expect(await archiveWithoutLog(context)).toEqual(before);
    }
  });

  test('stays of its size while its pieces and pins do, and no longer', async () => {
    const context = await yardContext();
    await context.database.write((tx) => setKitSize(tx, 'pair', ROW));
    const sizes = () => context.database.read(sizesOfKits);
    const texts = await textsOf(context, 'pair');
    await savedAnyway(context, editKit('pair', { ...texts, name: 'A pair', packMinutes: '9' }));
    expect(await sizes()).toEqual([{ kit: 'pair', size: ROW }]);
    await savedAnyway(context, editKit('pair', { ...(await textsOf(context, 'pair')), 'pieceCount-0': '3' }));
    expect(await sizes()).toEqual([]);
    expect(await kitsIn(context)).toMatchObject([{ name: 'A pair', packMinutes: 9, pieces: [{ count: 3 }] }]);
  });

  test('is no longer of its size with other pins, and of it again when that is undone', async () => {
    const context = await yardContext();
    await context.database.write((tx) => setKitSize(tx, 'pair', ROW));
    const texts = await textsOf(context, 'pair');
    const change = await savedAnyway(context, editKit('pair', { ...texts, 'cutLength-0': '450' }));
    expect(await context.database.read(sizesOfKits)).toEqual([]);
    expect((await undoChange(context, change)).ok).toBe(true);
    expect(await context.database.read(sizesOfKits)).toEqual([{ kit: 'pair', size: ROW }]);
  });

  test('shows a pin again as it was typed, in the row where it stands now', async () => {
    const context = await yardContext();
    const texts = await textsOf(context, 'pair');
    const two = { ...texts, 'cutLength-0': '', 'cut-0': '', 'cutCount-0': '', 'cut-1': 'rod', 'cutLength-1': '1 ft' };
    await savedAnyway(context, editKit('pair', { ...two, 'cutCount-1': '2' }));
    expect(await textsOf(context, 'pair')).toMatchObject({ 'cut-0': 'rod', 'cutLength-0': '1 ft', 'cutCount-0': '2' });
  });

  test('that is gone is said to be, and one emptied is refused', async () => {
    const context = await yardContext();
    expect(await refusedFor(context, editKit('none', FOUR))).toEqual(['name: This kit is not there any more.']);
    expect(await refusedFor(context, editKit('pair', { name: 'Pair of panels' }))).toEqual([
      'piece-0: What is in it? Choose a piece, and how many.',
    ]);
    expect(await kitsIn(context)).toMatchObject([{ id: 'pair', pieces: [{ count: 2 }] }]);
  });
});
