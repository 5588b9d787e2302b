import { expect, test } from 'vitest';
import { setCastingSize, sizesOfCastings } from '../../../db/stores/casting-size-store.ts';
import { addKit, setKitSize, sizesOfKits } from '../../../db/stores/kit-store.ts';
import { replaceYard } from '../../../db/stores/replace-yard.ts';
import { setUnits, unitsOfYard } from '../../../db/stores/units-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import type { KitSize } from '../../../shared/kit-size.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const size: KitSize = {
  ...{ shape: 'rectangle', faces: 'inside', courses: 2, ground: { typed: '4"', mm: 101.6 } },
  ...{ length: { typed: '3 ft', mm: 914.4 }, width: { typed: '450', mm: 450 } },
};
const kit = {
  ...{ id: 'bed', name: 'Bed', packMinutes: 12, parts: [] },
  pieces: [{ casting: 'panel-900', count: 8 }],
  cuts: [{ material: 'rod', lengthMm: 501.6, count: 4 }],
};
const panel = {
  ...{ casting: 'panel-900', length: { typed: '35 1/2"', mm: 901.7 } },
  ...{ height: { typed: '8"', mm: 203.2 }, thickness: { typed: '35', mm: 35 } },
};

test('a kit is added last, with the size it was worked out from as it was typed', async () => {
  const { database, now } = await yardContext();
  await database.write((tx) => addKit(tx, kit, size));
  const { kits } = await database.read((tx) => loadYardFile(tx, now));
  expect(kits).toEqual([...smallYard().kits, kit]);
  expect(await database.read(sizesOfKits)).toEqual([{ kit: 'bed', size }]);
  await database.write((tx) => setKitSize(tx, 'bed', { ...size, courses: 3 }));
  expect(await database.read(sizesOfKits)).toEqual([{ kit: 'bed', size: { ...size, courses: 3 } }]);
});

test('sizes are no part of the yard file, and go with what they belong to', async () => {
  const { database, now } = await yardContext();
  await database.write(async (tx) => {
    await addKit(tx, kit, size);
    await setCastingSize(tx, { ...panel, thickness: { typed: '40', mm: 40 } });
    await setCastingSize(tx, panel);
  });
  expect(await database.read(sizesOfCastings)).toEqual([panel]);
  const file = await database.read((tx) => loadYardFile(tx, now));
  expect(file).toEqual(smallYard({ kits: [...smallYard().kits, kit] }));
  await database.write((tx) => replaceYard(tx, file));
  expect(await database.read((tx) => loadYardFile(tx, now))).toEqual(file);
  expect(await database.read(sizesOfCastings)).toEqual([]);
  expect(await database.read(sizesOfKits)).toEqual([]);
});

test('a yard is metric until it says otherwise', async () => {
  const { database } = await yardContext();
  expect(await database.read(unitsOfYard)).toBe('metric');
  await database.write((tx) => setUnits(tx, 'US'));
  expect(await database.read(unitsOfYard)).toBe('US');
  await database.write((tx) => setUnits(tx, 'metric'));
  expect(await database.read(unitsOfYard)).toBe('metric');
});
