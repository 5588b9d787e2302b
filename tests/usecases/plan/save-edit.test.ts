import { describe, expect, test } from 'vitest';
import { recentChanges } from '../../../db/stores/change-store.ts';
import { replaceDay } from '../../../db/stores/work-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { done, refuse } from '../../../src/usecases/core/context.ts';
import { type Edit, saveEdit } from '../../../src/usecases/plan/save-edit.ts';
import { countedNow } from '../../support/stock-set.ts';
import { yardContext } from '../../support/yard-context.ts';

const dayOff: Edit = {
  what: { kind: 'no work', words: 'No work on Sat 10 Apr' },
  work: async (tx) => {
    await replaceDay(tx, '2027-04-10', []);
    return done(null);
  },
};

describe('saving', () => {
  test('does at once what moves no date', async () => {
    const context = await yardContext();
    const saved = await saveEdit(
      context,
      {
        what: { kind: 'stock', words: 'Bags' },
        work: async (tx) => {
          await countedNow(tx, 'mortar', 19);
          return done('bags');
        },
      },
      undefined,
    );
    expect(saved).toMatchObject({ kind: 'saved', value: 'bags' });
    expect((await context.database.read((tx) => loadYardFile(tx, context.now))).materials[0]?.onHand).toBe(19);
  });

  test('holds back what moves a date until that very effect was seen', async () => {
    const context = await yardContext();
    const first = await saveEdit(context, dayOff, undefined);
    expect(first).toMatchObject({
      kind: 'moves',
      effect: { moved: [{ customer: 'School garden', promisedOn: '2027-04-10', to: '2027-04-17' }] },
    });
    expect(await context.database.read((tx) => recentChanges(tx, 5))).toEqual([]);
    expect(await saveEdit(context, dayOff, '27-001 2027-04-24')).toMatchObject({ kind: 'moves' });
    const seen = first.kind === 'moves' ? first.effect.seen : '';
    expect(await saveEdit(context, dayOff, seen)).toMatchObject({ kind: 'saved' });
    expect((await context.database.read((tx) => loadYardFile(tx, context.now))).closed).toEqual(['2027-04-10']);
  });

  test('is refused as the work refuses it', async () => {
    const context = await yardContext();
    const edit: Edit = { what: { kind: 'x', words: 'x' }, work: async () => refuse('name', 'Is empty.') };
    expect(await saveEdit(context, edit, undefined)).toEqual({
      kind: 'refused',
      faults: [{ path: 'name', message: 'Is empty.' }],
    });
  });
});
