import { describe, expect, test } from 'vitest';
import { seedDemo } from '../../../db/demo/larch-row.ts';
import { setCastingSize, sizesOfCastings } from '../../../db/stores/casting-size-store.ts';
import { sizesOfKits } from '../../../db/stores/kit-store.ts';
import { setUnits } from '../../../db/stores/units-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { addKitBySize } from '../../../src/usecases/kits/add-kit-by-size.ts';
import { drawKit, drawKits } from '../../../src/usecases/kits/draw-kits.ts';
import { showKitBySize } from '../../../src/usecases/kits/show-kit-by-size.ts';
import { DEMO_NOW } from '../../support/screens.ts';
import { temporaryDatabase } from '../../support/temporary-database.ts';
import { yardContext } from '../../support/yard-context.ts';

const demo = async () => {
  const database = await temporaryDatabase();
  await database.write((tx) => seedDemo(tx, DEMO_NOW.slice(0, 10), DEMO_NOW));
  return { database, now: DEMO_NOW };
};
type Context = Awaited<ReturnType<typeof demo>>;

const BED = { shape: 'rectangle', faces: 'outside', length: '1835', width: '935', courses: '3', ground: '100' };
const found = async (context: Context, typed: Parameters<typeof showKitBySize>[1]) => {
  const model = await showKitBySize(context, typed);
  if (model.form === null || !model.found) throw new Error('Nothing was worked out.');
  return model.found;
};

describe('a kit by size, in Larch Row Yard', () => {
  // 1835 - 35 = 1800 = two of 900; 935 - 35 = 900. Three courses of six, at 13.5 kg, 200 high.
  test('has its panels, pins, sleeves and mass', async () => {
    const { made } = await found(await demo(), BED);
    expect(made).toMatchObject({
      ...{ outside: '1835 mm by 935 mm', inside: '1765 mm by 865 mm', height: '600 mm', comesOut: null },
      panels: [{ name: 'Panel 900', count: 18, each: '13.5 kg', together: '243 kg' }],
      pins: {
        count: 6,
        corners: 4,
        joints: 2,
        ends: 0,
        length: '700 mm',
        above: '600 mm',
        from: 'Galvanised rod 12 mm, 3 m',
      },
      sleeves: [{ count: 36, length: '190 mm', from: 'Sleeve pipe 20 mm, 3 m' }],
      ...{ mass: '243 kg', heaviest: { name: 'Panel 900', mass: '13.5 kg', lifting: 'one' }, loads: null, same: null },
    });
  });

  // 200 kg holds 14 of 13.5 kg (189); 18 are two loads.
  test('goes in so many loads', async () => {
    const { made } = await found(await demo(), { ...BED, payload: '200 kg' });
    expect(made?.loads).toMatchObject({ payload: '200 kg', count: 2 });
    const heavy = await found(await demo(), { ...BED, payload: '10 kg' });
    expect(heavy.made?.loads).toEqual({ payload: '10 kg', count: 0, loads: [] });
  });

  test('is the same kit in inches and pounds', async () => {
    const context = await demo();
    await context.database.write((tx) => setUnits(tx, 'US'));
    const metric = await found(await demo(), BED);
    // 1835 / 25.4 = 72.244, so 72 1/4 in, 0.15 mm more; 935 / 25.4 = 36.811, so 36 13/16 in.
    const us = await found(context, { ...BED, length: `6' 1/4"`, width: '36 13/16', ground: '100 mm' });
    expect(us.made?.panels.map(({ name, count }) => [name, count])).toEqual(
      metric.made?.panels.map(({ name, count }) => [name, count]),
    );
    expect(us.made?.asked).toBe(`6' 1/4" by 3 ft 13/16 in`);
    expect(us.made?.mass).toBe('535.7 lb'); // 243 / 0.45359237
  });

  test('that can be made no nearer says which can', async () => {
    const { made, nearest } = await found(await demo(), { ...BED, length: '1800', width: '1000' });
    expect(made).toBeNull();
    // 1835 and 935 are a panel's thickness more than what panels add up to; so is 1085 (600 + 450).
    expect(nearest[0]).toEqual({
      ...{ text: '1835 mm by 935 mm', difference: '35 mm longer, 65 mm narrower' },
      typed: { length: '1835 mm', width: '935 mm' },
    });
  });

  test('starts from one panel to a side when nothing was typed', async () => {
    const model = await showKitBySize(await demo(), {});
    expect(model.form?.typed).toMatchObject({ length: '1235 mm', width: '935 mm', courses: '2', ground: '100 mm' });
  });

  test('is known when the yard has it', async () => {
    const { made } = await found(await demo(), { ...BED, length: '1235', width: '635', courses: '2', ground: '80' });
    expect(made?.same).toEqual({ id: 'planter', name: 'Planter 1200 x 600, two courses' });
  });
});

describe('adding it', () => {
  test('puts it among the kits with its size, and can be taken back', async () => {
    const context = await demo();
    const before = await context.database.read((tx) => loadYardFile(tx, DEMO_NOW));
    const added = await addKitBySize(context, BED);
    if (!added.ok) throw new Error(JSON.stringify(added.faults));
    expect(added.value.words).toBe('Kit 1835 x 935, three courses added to the kits');
    const kit = added.value.yard.kits.at(-1);
    expect(kit).toEqual({
      ...{ id: 'kit-1835-x-935-three-courses', name: 'Kit 1835 x 935, three courses', parts: [], packMinutes: 40 },
      ...{ pieces: [{ casting: 'panel-900', count: 18 }], cuts: [{ material: 'pin-rod', lengthMm: 700, count: 6 }] },
    });
    const drawn = await drawKits(context, added.value.yard, [{ kit: kit?.id ?? '', quantity: 2 }]);
    expect(drawn.map(({ name, drawing }) => [name, drawing.courses.map(({ title }) => title)])).toEqual([
      ['Kit 1835 x 935, three courses', ['Courses 1 and 3', 'Course 2']],
    ]);
    expect((await undoChange(context, added.value.change)).ok).toBe(true);
    expect(await context.database.read((tx) => loadYardFile(tx, DEMO_NOW))).toEqual(before);
    expect((await context.database.read(sizesOfKits)).map(({ kit: id }) => id)).not.toContain(kit?.id);
  });

  test.each([
    [{ length: '1500' }, 'length', "That size can't be made from these panels."],
    [{ length: 'long' }, 'length', '"long" is not a length.'],
    [{ name: 'Trough 900 x 450, one course' }, 'name', 'There is a kit of that name.'],
    [{ packMinutes: 'few' }, 'packMinutes', 'How many minutes?'],
    [{ courses: '12', ground: '700' }, 'courses', 'The pins would be longer than what they are cut from.'],
  ])('%j is refused at %s', async (changes, path, message) => {
    const outcome = await addKitBySize(await demo(), { ...BED, ...changes });
    expect(outcome.ok ? [] : outcome.faults.map((fault) => fault.path)).toEqual([path]);
    expect(outcome.ok ? '' : outcome.faults[0]?.message).toContain(message);
  });
});

test('every kit of the demo that has a size is drawn as it is made', async () => {
  const { database } = await demo();
  const { yard, sizes, kitSizes } = await database.read(async (tx) => ({
    yard: await loadYardFile(tx, DEMO_NOW),
    sizes: await sizesOfCastings(tx),
    kitSizes: await sizesOfKits(tx),
  }));
  const kitOf = (id: string) => yard.kits.find((kit) => kit.id === id)!;
  expect(kitSizes.map(({ kit }) => kit).sort()).toEqual(['cold-frame', 'herb-square', 'planter', 'trough']);
  for (const { kit, size } of kitSizes)
    expect(drawKit(kitOf(kit), size, yard, sizes, 'metric')?.name).toBe(kitOf(kit).name);
  const { size } = kitSizes.find(({ kit }) => kit === 'trough')!;
  // The panels have since changed, or the kit has: no drawing.
  const thicker = sizes.map((one) => ({ ...one, thickness: { typed: '50', mm: 50 } }));
  expect(drawKit(kitOf('trough'), size, yard, thicker, 'metric')).toBeNull();
  expect(drawKit(kitOf('planter'), size, yard, sizes, 'metric')).toBeNull();
});

test('no panel is made of a piece that is as thick as it is long', async () => {
  const context = await yardContext();
  const cube = { typed: '100', mm: 100 };
  await context.database.write((tx) =>
    setCastingSize(tx, { casting: 'panel-900', length: cube, height: cube, thickness: cube }),
  );
  expect((await showKitBySize(context, {})).form).toBeNull();
});
