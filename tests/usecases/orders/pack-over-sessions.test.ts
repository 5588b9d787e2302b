import { describe, expect, test } from 'vitest';
import { finishedPieces } from '../../../db/stores/finished-store.ts';
import { materialById } from '../../../db/stores/material-store.ts';
import { orderById } from '../../../db/stores/order-store.ts';
import { loadYardFile } from '../../../db/stores/yard-store.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { exportArchive, exportYard } from '../../../src/usecases/files/export-file.ts';
import { loadFile, readUpload } from '../../../src/usecases/files/load-file.ts';
import { cancelOrder } from '../../../src/usecases/orders/cancel-order.ts';
import { handOverOrder } from '../../../src/usecases/orders/hand-over-order.ts';
import { packOrder } from '../../../src/usecases/orders/pack-order.ts';
import { showOrder } from '../../../src/usecases/orders/show-order.ts';
import { unpackOrder } from '../../../src/usecases/orders/unpack-order.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { giveUpLateWork } from '../../../src/usecases/today/give-up-late-work.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { writeLateWork } from '../../../src/usecases/today/write-late-work.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { yardContext } from '../../support/yard-context.ts';
import { yardInSpells } from '../../support/yard-in-spells.ts';

const april = (day: number, clock: string) => `2027-04-${String(day).padStart(2, '0')}T${clock}:00+01:00`;

const inTwo = async () => {
  const { database } = await yardContext(yardInSpells());
  const at = (day: number, clock: string) => ({ database, now: april(day, clock) });
  const stored = () => database.read((tx) => orderById(tx, '27-001'));
  const packs = async (day: number, clock: string) => {
    const { plan } = await currentPlan(at(day, clock));
    return plan.orders.map(({ packStart, packEnd, packs: spells }) => ({ packStart, packEnd, packs: spells }));
  };
  const stock = () =>
    database.read(async (tx) => ({
      panels: (await finishedPieces(tx)).reduce((sum, { count }) => sum + count, 0),
      rods: (await materialById(tx, 'rod'))?.onHand,
    }));
  /** The step of Today that packs, with which its button is sent. */
  const step = async (day: number, clock: string) => {
    const { steps, late, begun } = await showToday(at(day, clock));
    const all = [...late.flatMap(({ lines }) => lines), ...begun].map((line) => line.step);
    return [...all, ...steps].flatMap((one) => (one.kind === 'pack' ? [one] : []))[0]!;
  };
  const tap = async (day: number, clock: string) =>
    packOrder(at(day, clock), '27-001', { evenShort: false, step: (await step(day, clock)).name });
  return { database, at, stored, packs, stock, step, tap };
};

const FIRST = { packStart: april(10, '08:00'), packEnd: april(10, '12:00') };
const SECOND = { packStart: april(17, '10:00'), packEnd: april(17, '12:00') };

describe('an order that no session is long enough for', () => {
  test('is on Today in each session with what of it is packed then', async () => {
    const { packs, step, at } = await inTwo();
    expect(await packs(9, '09:00')).toEqual([
      { packStart: FIRST.packStart, packEnd: SECOND.packEnd, packs: [FIRST, SECOND] },
    ]);
    expect((await step(9, '09:00')).part).toEqual({ minutes: 240, before: 0, inAll: 360, goesOn: SECOND.packStart });
    const order = await showOrder(at(9, '09:00'), '27-001');
    expect(order).toMatchObject({
      parcels: 2,
      order: {
        readyOn: '2027-04-17',
        packings: [
          { at: FIRST.packStart, minutes: 240 },
          { at: SECOND.packStart, minutes: 120 },
        ],
      },
    });
  });

  test('keeps what was packed in the first, and is packed with the last', async () => {
    const { at, stored, packs, stock, step, tap } = await inTwo();
    const { words, plan, yard } = doneOf(await tap(10, '12:00'));
    expect(words).toBe('Packed for School garden, 240 minutes of it');
    expect(await stored()).toMatchObject({ packedMinutes: 240, packedAt: null });
    // All that it is made of is in its parcels: six panels, six lengths of 300 out of one rod of 3000.
    expect(await stock()).toEqual({ panels: 1, rods: 2 });
    expect([...audit(yard, plan).faults, ...refereePlan(yard, plan)]).toEqual([]);
    expect(await packs(10, '12:01')).toEqual([{ ...SECOND, packs: undefined }]);
    expect((await step(17, '08:00')).part).toEqual({ minutes: 120, before: 240, inAll: 360, goesOn: null });
    expect((await step(17, '08:00')).cuts).toEqual([]);
    expect((await showToday(at(17, '08:00'))).packedInPart).toEqual([
      { order: '27-001', customer: 'School garden', minutes: 240, inAll: 360 },
    ]);
    expect(doneOf(await tap(17, '12:00')).words).toBe('Packed for School garden');
    expect(await stored()).toMatchObject({ packedMinutes: null, packedAt: april(17, '12:00') });
    expect(await stock()).toEqual({ panels: 1, rods: 2 });
  });

  test('may be packed for less than planned, or for so long that nothing is left', async () => {
    const { at, stored, packs, step, tap } = await inTwo();
    const { name } = await step(10, '11:00');
    const less = { evenShort: false, step: name, minutes: 90 };
    expect(doneOf(await packOrder(at(10, '12:00'), '27-001', less)).words).toBe(
      'Packed for School garden, 90 minutes of it',
    );
    expect(await stored()).toMatchObject({ packedMinutes: 90, packedAt: null });
    expect((await packs(10, '12:01'))[0]?.packs).toHaveLength(2);
    doneOf(await tap(17, '12:00'));
    const last = await step(24, '12:00');
    expect(last.part).toMatchObject({ before: 90 + 240, minutes: 30, goesOn: null });
    const more = { evenShort: false, step: last.name, minutes: 45 };
    expect(doneOf(await packOrder(at(24, '12:00'), '27-001', more)).words).toBe('Packed for School garden');
    expect(await stored()).toMatchObject({ packedMinutes: null, packedAt: april(24, '12:00') });
  });

  test('is recorded once a session, however often its button is tapped', async () => {
    const { at, step, stored } = await inTwo();
    const { name } = await step(10, '11:50');
    const record = () => packOrder(at(10, '12:00'), '27-001', { evenShort: false, step: name });
    const first = doneOf(await record());
    expect(doneOf(await record()).change).toBe(first.change);
    expect(await stored()).toMatchObject({ packedMinutes: 240, packedAt: null });
    expect(
      refusalOf(await packOrder(at(10, '12:00'), '27-001', { evenShort: false, step: 'late-pack-1-27-001' })),
    ).toMatch(/^order: That part of its packing is no longer planned then/);
  });

  test('is as it was before when that is undone', async () => {
    const { at, stored, packs, stock, tap } = await inTwo();
    const before = await packs(10, '12:00');
    const { change } = doneOf(await tap(10, '12:00'));
    doneOf(await undoChange(at(10, '12:02'), change));
    expect(await stored()).toMatchObject({ packedMinutes: null, packedAt: null });
    expect(await stock()).toEqual({ panels: 7, rods: 3 });
    expect(await packs(10, '12:02')).toEqual(before);
  });

  test('can be unpacked, and is not changed or cancelled before', async () => {
    const { at, stored, stock, tap } = await inTwo();
    doneOf(await tap(10, '12:00'));
    expect(refusalOf(await cancelOrder(at(10, '12:05'), '27-001'))).toBe(
      'order: Order 27-001 is packed in part. Unpack it on Today first. Nothing was changed.',
    );
    expect((await showOrder(at(10, '12:05'), '27-001'))?.parcels).toBeNull();
    doneOf(await unpackOrder(at(10, '12:05'), '27-001'));
    expect(await stored()).toMatchObject({ packedMinutes: null, packedAt: null });
    expect((await stock()).panels).toBe(7);
    const { plan } = await currentPlan(at(10, '12:06'));
    expect(plan.orders[0]?.packs).toHaveLength(2);
  });

  test('takes nothing more when it is handed over half packed', async () => {
    const { at, stored, stock, tap } = await inTwo();
    doneOf(await tap(10, '12:00'));
    doneOf(await handOverOrder(at(10, '12:05'), '27-001', { evenShort: false }));
    expect(await stored()).toMatchObject({ status: 'handed over' });
    expect(await stock()).toEqual({ panels: 1, rods: 2 });
  });

  test('holds its hands while a spell is under way, whatever is changed', async () => {
    const { database, packs, step, at } = await inTwo();
    await packs(9, '09:00');
    expect(await packs(10, '09:30')).toEqual([
      { packStart: FIRST.packStart, packEnd: SECOND.packEnd, packs: [FIRST, SECOND] },
    ]);
    const { begun } = await showToday(at(10, '09:30'));
    expect(begun.map(({ name }) => name)).toEqual([(await step(10, '09:30')).name]);
    doneOf(await giveUpLateWork(at(10, '09:35'), { step: begun[0]!.name, session: null }));
    const [anew] = await packs(10, '09:36');
    expect(anew?.packs?.[0]?.packStart).not.toBe(FIRST.packStart);
    expect(
      (await database.read((tx) => loadYardFile(tx, april(10, '09:36')))).orders[0]?.packedMinutes,
    ).toBeUndefined();
  });
});

describe('a spell that is over and not recorded', () => {
  test('is on the list of its session, and recorded as planned there', async () => {
    const { at, packs, stored, step, tap } = await inTwo();
    await packs(9, '09:00');
    const { late } = await showToday(at(11, '09:00'));
    expect(late.map(({ lines }) => lines.map((line) => line.name))).toEqual([[(await step(11, '09:00')).name]]);
    expect(await packs(11, '09:00')).toEqual([
      { packStart: FIRST.packStart, packEnd: SECOND.packEnd, packs: [FIRST, SECOND] },
    ]);
    expect(doneOf(await writeLateWork(at(11, '09:00'))).words).toBe('1 order packed in part as planned on Sat 10 Apr');
    expect(await stored()).toMatchObject({ packedMinutes: 240, packedAt: null });
    expect(await packs(11, '09:01')).toEqual([{ ...SECOND, packs: undefined }]);
    // The rest of it is not recorded: a tap for a part that is not planned finds nothing.
    const other = { evenShort: false, step: 'late-pack-1-27-001' };
    expect(refusalOf(await packOrder(at(11, '09:02'), '27-001', other))).toMatch(/is no longer planned then/);
    expect(doneOf(await tap(17, '12:00')).words).toBe('Packed for School garden');
    expect(await stored()).toMatchObject({ packedAt: april(17, '12:00') });
  });

  test('is packed with the last where both are recorded at once', async () => {
    const { at, packs, stored, stock } = await inTwo();
    await packs(9, '09:00');
    doneOf(await writeLateWork(at(18, '09:00')));
    expect(await stored()).toMatchObject({ packedMinutes: null, packedAt: SECOND.packEnd });
    expect(await stock()).toEqual({ panels: 1, rods: 2 });
  });

  test('is planned anew where it was not done, and on its list again when that is undone', async () => {
    const { at, packs, stored, step } = await inTwo();
    await packs(9, '09:00');
    const { name } = await step(11, '09:00');
    const { change } = doneOf(await giveUpLateWork(at(11, '09:00'), { step: name, session: null }));
    // What is planned for the 17th stays, and the rest comes after it.
    expect((await packs(11, '09:01'))[0]?.packs?.map(({ packStart }) => packStart)).toEqual([
      april(17, '10:00'),
      april(24, '08:00'),
    ]);
    doneOf(await undoChange(at(11, '09:05'), change));
    expect((await step(11, '09:05')).name).toBe(name);
    doneOf(await writeLateWork(at(11, '09:06')));
    expect(await stored()).toMatchObject({ packedMinutes: 240 });
  });
});

describe('an order of which some is packed', () => {
  test('goes out with a file and comes in again', async () => {
    const { database, at, tap, packs, stored } = await inTwo();
    await packs(9, '09:00');
    doneOf(await tap(10, '12:00'));
    const context = at(10, '12:05');
    for (const exported of [exportArchive, exportYard]) {
      const { text } = await exported(context);
      doneOf(await unpackOrder(context, '27-001'));
      const read = doneOf(readUpload(new TextEncoder().encode(text), context.now));
      doneOf(await loadFile(context, read));
      expect(await stored()).toMatchObject({ packedMinutes: 240, packedAt: null });
      expect((await database.read((tx) => loadYardFile(tx, context.now))).orders[0]?.packedMinutes).toBe(240);
    }
  });
});
