import { expect, test } from 'vitest';
import type { Database } from '../../../db/open.ts';
import { addChange, changesNext, recentChanges, recentHeads } from '../../../db/stores/change-store.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';

const promise = (order: string, completesOn: string) => ({
  ...{ order, customer: null, due: null, completesOn, daysLate: null, reason: null },
});

/** One change after another, of these kinds; each moves an order by one day. */
const changed = async (kinds: readonly string[]): Promise<Database> => {
  const database = await temporaryDatabase();
  await database.write(async (tx) => {
    for (const [place, kind] of kinds.entries())
      await addChange(tx, {
        ...{ at: '2027-04-08T09:00:00Z', kind, words: `${kind} ${place + 1}`, dropped: [] },
        before: [promise('a', '2027-04-10')],
        after: [promise('a', '2027-04-11')],
      });
  });
  return database;
};

test('the newest changes come first, with or without what they did to the dates', async () => {
  const database = await changed(['poured', 'better', 'stripped', 'packed']);
  const heads = await database.read((tx) => recentHeads(tx, 2));
  expect(heads).toEqual([
    { id: 4, at: '2027-04-08T09:00:00Z', kind: 'packed', words: 'packed 4', by: null, undoneBy: null },
    { id: 3, at: '2027-04-08T09:00:00Z', kind: 'stripped', words: 'stripped 3', by: null, undoneBy: null },
  ]);
  const whole = await database.read((tx) => recentChanges(tx, 2, 4));
  expect(whole.map(({ id, after }) => [id, after[0]?.completesOn])).toEqual([
    [3, '2027-04-11'],
    [2, '2027-04-11'],
  ]);
});

test('changes of a kind that follow directly on one end with the first of another kind', async () => {
  const database = await changed(['poured', 'better', 'better', 'stripped', 'better', 'packed']);
  const next = (id: number) => database.read(async (tx) => (await changesNext(tx, id, 'better')).map((one) => one.id));
  expect([await next(1), await next(2), await next(4), await next(5), await next(6)]).toEqual([
    [2, 3],
    [3],
    [5],
    [],
    [],
  ]);
});

test('those that end the record are all of them', async () => {
  const database = await changed(['poured', 'better', 'better']);
  const next = await database.read((tx) => changesNext(tx, 1, 'better'));
  expect(next.map(({ words }) => words)).toEqual(['better 2', 'better 3']);
});
