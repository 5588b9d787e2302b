import { describe, expect, test } from 'vitest';
import { setCastingSize, sizesOfCastings } from '../../../db/stores/casting-size-store.ts';
import { addGuesses, guessesOfYard, setTyped, typedOf } from '../../../db/stores/figure-store.ts';
import { setKitSize, sizesOfKits } from '../../../db/stores/kit-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { saveEdit } from '../../../src/usecases/plan/save-edit.ts';
import { removeEntry } from '../../../src/usecases/yard/remove-entry.ts';
import type { Removable } from '../../../src/usecases/yard/uses-of.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const base = smallYard();
/** Beside what the small yard needs, one of each that nothing needs. */
const yard = smallYard({
  ...base,
  materials: [...base.materials, { id: 'sand', name: 'Sand', unit: 'kg', onHand: 5 }],
  mixes: [...base.mixes, { ...base.mixes[0]!, id: 'spare', name: 'Spare mix' }],
  castings: [...base.castings, { ...base.castings[0]!, id: 'tile', name: 'Tile' }],
  moulds: [...base.moulds, { ...base.moulds[0]!, id: 'Old one' }],
  kits: [...base.kits, { ...base.kits[0]!, id: 'bench', name: 'Bench' }],
});
const mm = (typed: number) => ({ typed: String(typed), mm: typed });

const LISTS = { casting: 'castings', mix: 'mixes', material: 'materials', mould: 'moulds', kit: 'kits' } as const;

const filled = async () => {
  const context = await yardContext(yard);
  await context.database.write(async (tx) => {
    const size = { length: mm(300), height: mm(200), thickness: mm(30) };
    await setCastingSize(tx, { casting: 'tile', ...size });
    await setKitSize(tx, 'bench', { shape: 'row', faces: 'outside', courses: 1, length: mm(900), ground: mm(0) });
  });
  return context;
};

describe.each<[Removable, string, string]>([
  ['casting', 'tile', 'Tile removed from what is cast'],
  ['mix', 'spare', 'Spare mix removed'],
  ['material', 'sand', 'Sand removed from the stock book'],
  ['mould', 'Old one', 'Old one removed'],
  ['kit', 'bench', 'Bench removed from the kits'],
])('a %s that nothing needs', (kind, id, words) => {
  test('goes with its guesses, what was typed and its size, and comes back with them', async () => {
    const context = await filled();
    await context.database.write(async (tx) => {
      await addGuesses(tx, [{ kind, id, figure: 'some' }]);
      await setTyped(tx, { kind, id, figure: 'some' }, '2 lb');
    });
    const look = () =>
      context.database.read(async (tx) => ({
        yard: await loadYardFile(tx, context.now),
        guesses: await guessesOfYard(tx),
        typed: await typedOf(tx, { kind, id }),
        sizes: [...(await sizesOfCastings(tx)), ...(await sizesOfKits(tx))].length,
      }));
    const before = await look();
    const saved = await saveEdit(context, removeEntry(kind, id), undefined);
    if (saved.kind !== 'saved') throw new Error(JSON.stringify(saved));
    const after = await look();
    expect(after.yard[LISTS[kind]].map((one) => one.id)).toEqual(
      before.yard[LISTS[kind]].map((one) => one.id).filter((one) => one !== id),
    );
    expect([after.guesses, after.typed]).toEqual([[], {}]);
    expect(after.sizes).toBe(kind === 'casting' || kind === 'kit' ? 1 : 2);
    const undone = await undoChange(context, saved.change);
    expect(undone.ok && undone.value.words).toBe(`Undone: ${words}`);
    expect(await look()).toEqual(before);
  });
});

test.each<[Removable, string, RegExp]>([
  ['casting', 'panel-900', /^Panel 900 is made by 2 moulds/],
  ['mix', 'thin', /^Thin panel mix is what 1 panel/],
  ['material', 'rod', /^Rod 12 mm goes into 1 kit/],
  ['kit', 'pair', /^Pair of panels is in 1 order/],
])('a %s that something needs stays, and it is said what does', async (kind, id, uses) => {
  const context = await yardContext();
  const saved = await saveEdit(context, removeEntry(kind, id), undefined);
  expect(saved).toEqual({ kind: 'refused', faults: [{ path: 'uses', message: expect.stringMatching(uses) }] });
});

test('what is gone already is said to be', async () => {
  const context = await yardContext();
  const saved = await saveEdit(context, removeEntry('kit', 'none'), undefined);
  expect(saved).toEqual({ kind: 'refused', faults: [{ path: 'name', message: 'It is not there any more.' }] });
});
