import { expect, test } from 'vitest';
import { openDatabase } from '../../db/open.ts';
import { replaceYard } from '../../db/stores/replace-yard.ts';
import { loadYardFile } from '../../db/stores/yard-store.ts';
import { undoChange } from '../../src/usecases/changes/undo-change.ts';
import { done } from '../../src/usecases/core/context.ts';
import { changing } from '../../src/usecases/plan/changing.ts';
import { remoteDatabase } from '../support/remote-database.ts';
import { smallYard } from '../support/small-yard.ts';
import { countedNow } from '../support/stock-set.ts';

test('a database behind an http: address is made, changed and undone like a file', async () => {
  const url = await remoteDatabase('secret');
  await (await openDatabase({ url, token: 'secret' })).close();
  const database = await openDatabase({ url, token: 'secret' });
  const { now } = smallYard().yard;
  await database.write((tx) => replaceYard(tx, smallYard()));
  const context = { database, now };
  const bags = async () => (await database.read((tx) => loadYardFile(tx, now))).materials[0]?.onHand;
  expect(await database.read((tx) => loadYardFile(tx, now))).toEqual(smallYard());
  const counted = await changing(context, { kind: 'stock', words: 'Counted' }, async (tx) => {
    await countedNow(tx, 'mortar', 0.1 + 0.2);
    return done(null);
  });
  expect(await bags()).toBe(0.1 + 0.2);
  if (!counted.ok) throw new Error('refused');
  expect(await undoChange(context, counted.value.change)).toMatchObject({ ok: true });
  expect(await bags()).toBe(20);
  const failing = database.write(async (tx) => {
    await countedNow(tx, 'mortar', 1);
    throw new Error('no');
  });
  await expect(failing).rejects.toThrow('no');
  expect(await bags()).toBe(20);
  await database.close();
});

test('a wrong token is refused', async () => {
  const url = await remoteDatabase('secret');
  await expect(openDatabase({ url, token: 'other' })).rejects.toMatchObject({
    code: 'SERVER_ERROR',
    message: expect.stringContaining('401'),
  });
});
