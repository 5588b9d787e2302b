import { expect, test } from 'vitest';
import { materialById } from '../../db/stores/material-store.ts';
import { replaceYard } from '../../db/stores/replace-yard.ts';
import { revision } from '../../db/stores/yard-store.ts';
import { smallYard } from '../support/small-yard.ts';
import { temporaryDatabase } from '../support/temporary-database.ts';

test.each(['read', 'write'] as const)('between two statements of a %s whatever waits has its turn', async (kind) => {
  const database = await temporaryDatabase();
  await database.write((tx) => replaceYard(tx, smallYard()));
  const turns: string[] = [];
  await database[kind](async (tx) => {
    setImmediate(() => turns.push('other'));
    await revision(tx);
    turns.push('first');
    setImmediate(() => turns.push('other'));
    await materialById(tx, 'mortar');
    turns.push('second');
  });
  expect(turns).toEqual(['other', 'first', 'other', 'second']);
});

test('commits are counted, and what was rolled back is none', async () => {
  const database = await temporaryDatabase();
  const before = database.commits();
  await database.write((tx) => replaceYard(tx, smallYard()));
  expect(database.commits()).toBe(before + 1);
  await expect(database.write(() => Promise.reject(new Error('no')))).rejects.toThrow('no');
  await database.read(revision);
  expect(database.commits()).toBe(before + 1);
});
