import { expect, test } from 'vitest';
import { readPlaces } from '../../db/read-places.ts';
import { materialById } from '../../db/stores/material-store.ts';
import { replaceYard } from '../../db/stores/replace-yard.ts';
import { smallYard } from '../support/small-yard.ts';
import { temporaryDatabase } from '../support/temporary-database.ts';

/** Work that ends when it is told to. */
const slowWork = () => {
  const begun: number[] = [];
  const ends: (() => void)[] = [];
  const work = (n: number) => () => {
    begun.push(n);
    return new Promise<number>((resolve) => {
      ends[n] = () => resolve(n);
    });
  };
  return { begun, work, end: (n: number) => ends[n]?.() };
};

const settled = () => new Promise((resolve) => setImmediate(resolve));

test('so many run at once, the next begins when one has ended, in the order they came', async () => {
  const { begun, work, end } = slowWork();
  const aFew = readPlaces(2);
  const all = [0, 1, 2, 3].map((n) => aFew(work(n)));
  await settled();
  expect(begun).toEqual([0, 1]);
  end(1);
  await settled();
  expect(begun).toEqual([0, 1, 2]);
  end(2);
  await settled();
  end(0);
  end(3);
  expect(await Promise.all(all)).toEqual([0, 1, 2, 3]);
});

test('work that fails gives its place free, and places that were free stay so', async () => {
  const aFew = readPlaces(1);
  await expect(aFew(() => Promise.reject(new Error('no')))).rejects.toThrow('no');
  expect(await Promise.all([aFew(async () => 1), aFew(async () => 2)])).toEqual([1, 2]);
});

test('a hundred reads at once are all answered, though the driver has far fewer connections', async () => {
  const database = await temporaryDatabase();
  await database.write((tx) => replaceYard(tx, smallYard()));
  const read = () =>
    database.read(async (tx) => {
      const [first, second] = [await materialById(tx, 'mortar'), await materialById(tx, 'mortar')];
      return first?.onHand === second?.onHand;
    });
  const answers = await Promise.all(Array.from({ length: 100 }, read));
  expect(answers).toEqual(Array.from({ length: 100 }, () => true));
});
