import { describe, expect, test } from 'vitest';
import { finishedPieces } from '../../../db/stores/finished-store.ts';
import { materialById } from '../../../db/stores/material-store.ts';
import { mouldById, updateMould } from '../../../db/stores/mould-store.ts';
import { offcutsByMaterial } from '../../../db/stores/offcut-store.ts';
import { orderById } from '../../../db/stores/order-store.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { cancelOrder } from '../../../src/usecases/orders/cancel-order.ts';
import { handOverOrder } from '../../../src/usecases/orders/hand-over-order.ts';
import { packOrder } from '../../../src/usecases/orders/pack-order.ts';
import { unpackOrder } from '../../../src/usecases/orders/unpack-order.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { recordPour } from '../../../src/usecases/today/record-pour.ts';
import { recordPrep } from '../../../src/usecases/today/record-prep.ts';
import { recordStrip } from '../../../src/usecases/today/record-strip.ts';
import { doneOf } from '../../support/outcomes.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

/** The planned yard on Saturday at a time of day. */
const on = async (clock: string, yard: YardFile = plannedYard()) => {
  const { database } = await yardContext(yard);
  const at = (later: string) => ({ database, now: saturday(later) });
  const mould = (id: string) => database.read((tx) => mouldById(tx, id));
  const onHand = (id: string) => database.read(async (tx) => (await materialById(tx, id))?.onHand ?? Number.NaN);
  const offcuts = (id: string) => database.read(async (tx) => (await offcutsByMaterial(tx)).get(id) ?? []);
  const pieces = () => database.read(finishedPieces);
  return { database, context: at(clock), at, mould, onHand, offcuts, pieces };
};

const filled = (mould: string, rest: { order?: string | null; sealed?: boolean; casting?: string } = {}) => ({
  ...{ mould, casting: 'panel-900', order: null, sealed: false },
  ...rest,
});
const faultOf = (outcome: { ok: true } | { ok: false; faults: { path: string; message: string }[] }) =>
  outcome.ok ? null : outcome.faults[0];

describe('poured', () => {
  const both = [filled('900 no. 1', { order: '27-001' }), filled('900 no. 2', { sealed: true })];

  test('fills the moulds now, and takes bags and what goes into the pieces from stock', async () => {
    const { context, mould, onHand } = await on('09:29');
    const outcome = await recordPour(context, { pours: both, bags: 1, filledAt: null });
    expect(outcome).toMatchObject({ ok: true, value: { words: '900 no. 1 and 900 no. 2 poured' } });
    expect(await mould('900 no. 1')).toMatchObject({
      // Filled before the other one, whose 7 minutes end at 9:29.
      piece: { casting: 'panel-900', filledAt: saturday('09:22'), order: '27-001' },
      condition: 'ready',
      prepped: false,
      turnsSinceOil: 1,
    });
    // Sealed before this pour, so this is its first turn; the order that is none leaves the piece to stock.
    expect(await mould('900 no. 2')).toMatchObject({
      ...{ piece: { filledAt: saturday('09:29'), order: null }, turnsSinceOil: 1 },
    });
    expect(await onHand('mortar')).toBe(2);
    expect(await onHand('mesh')).toBeCloseTo(4 - 2 * 0.16, 9);
  });

  test('takes the cut lengths, saw cuts and all, and leaves the rest of the stick', async () => {
    const base = plannedYard();
    const yard = plannedYard({
      castings: [{ ...base.castings[0]!, cuts: [{ material: 'rod', lengthMm: 297, count: 2 }] }],
    });
    const { context, onHand, offcuts } = await on('09:29', yard);
    await recordPour(context, { pours: both, bags: 1, filledAt: null });
    // Four of 297 mm and a cut of 3 mm each, out of 3000 mm.
    expect(await onHand('rod')).toBe(2);
    expect(await offcuts('rod')).toEqual([{ lengthMm: 1800, count: 1 }]);
  });

  test('plans on from there: the pieces in the moulds are stripped, nothing is poured twice', async () => {
    const { context } = await on('09:29');
    const outcome = await recordPour(context, { pours: both, bags: 1, filledAt: null });
    if (!outcome.ok) throw new Error(outcome.faults[0]?.message);
    const { plan } = outcome.value;
    expect(plan.pours).toEqual([]);
    expect(plan.strips.map(({ mould, stripStart }) => [mould, stripStart])).toEqual([
      ['900 no. 1', saturday('10:37')],
      ['900 no. 2', saturday('10:45')],
    ]);
    expect(plan.orders[0]).toMatchObject({ id: '27-001', completesOn: '2027-04-10', daysLate: 0 });
  });

  test('is undone whole', async () => {
    const { context, at, mould, onHand } = await on('09:29');
    const before = await mould('900 no. 2');
    const outcome = await recordPour(context, { pours: both, bags: 1, filledAt: null });
    if (!outcome.ok) throw new Error('refused');
    expect((await undoChange(at('09:31'), outcome.value.change)).ok).toBe(true);
    expect(await mould('900 no. 2')).toEqual(before);
    expect([await onHand('mortar'), await onHand('mesh')]).toEqual([3, 4]);
  });

  test('counts the bags the pieces need when nobody says, and the time that was written down', async () => {
    const { context, mould, onHand } = await on('11:00');
    await recordPour(context, { pours: [filled('900 no. 1')], bags: null, filledAt: '10:41' });
    // 13.6 kg of 27.5 a bag, whole bags.
    expect(await onHand('mortar')).toBe(2);
    expect((await mould('900 no. 1'))?.piece?.filledAt).toBe(saturday('10:41'));
  });

  // Once refused as a batch of no bags, as planned.
  test('of pieces without weight takes no bag', async () => {
    const yard = plannedYard();
    const light = { ...yard, castings: yard.castings.map((one) => ({ ...one, kg: 0 })) };
    const { context, mould, onHand } = await on('09:29', light);
    const before = await onHand('mortar');
    expect((await recordPour(context, { pours: [filled('900 no. 1')], bags: 0, filledAt: null })).ok).toBe(true);
    expect(await onHand('mortar')).toBe(before);
    expect((await mould('900 no. 1'))?.piece?.casting).toBe('panel-900');
  });

  test('stays true when an order has gone meanwhile, or a mould is out of use', async () => {
    const { database, context, mould } = await on('09:29');
    await cancelOrder(context, '27-001');
    await database.write((tx) => updateMould(tx, '900 no. 1', { condition: 'damaged' }));
    expect(
      (await recordPour(context, { pours: [filled('900 no. 1', { order: '27-001' })], bags: 1, filledAt: null })).ok,
    ).toBe(true);
    expect(await mould('900 no. 1')).toMatchObject({ condition: 'damaged', piece: { order: null } });
  });

  test.each([
    [{ pours: [] }, 'pours', 'Tick what was poured.'],
    [{ pours: [filled('900 no. 9')] }, 'pours', 'There is no mould 900 no. 9.'],
    [{ pours: [filled('900 no. 1', { casting: 'panel-600' })] }, 'pours', 'Choose what was poured.'],
    [{ pours: [filled('900 no. 1'), filled('900 no. 1')] }, 'pours', 'A mould is in it twice.'],
    [{ bags: 0 }, 'bags', 'How many bags? Above 0, up to 1 at once.'],
    [{ bags: 2 }, 'bags', 'How many bags? Above 0, up to 1 at once.'],
    [{ filledAt: '25:00' }, 'time', 'When? Write a time such as 10:45. Nothing was changed.'],
    [{ filledAt: '09:30' }, 'time', 'That time is still to come.'],
  ])('%o is refused', async (wrong, path, message) => {
    const { context, onHand } = await on('09:29');
    const outcome = await recordPour(context, { pours: [filled('900 no. 1')], bags: 1, filledAt: null, ...wrong });
    expect(faultOf(outcome)).toEqual({ path, message });
    expect(await onHand('mortar')).toBe(3);
  });

  test('twice is refused, and nothing is taken twice', async () => {
    const { context, onHand } = await on('09:29');
    await recordPour(context, { pours: [filled('900 no. 1')], bags: 1, filledAt: null });
    const again = await recordPour(context, {
      pours: [filled('900 no. 2'), filled('900 no. 1')],
      bags: 1,
      filledAt: null,
    });
    expect(faultOf(again)?.message).toBe('900 no. 1 has a piece in it already. Nothing was recorded.');
    expect(await onHand('mortar')).toBe(2);
  });
});

describe('ready to pour', () => {
  test('leaves nothing to do to the mould, and counts a sealing coat', async () => {
    const { context, mould } = await on('08:45', plannedYard({ moulds: plannedYard().moulds.slice(1) }));
    await recordPrep(context, { mould: '900 no. 2', casting: 'panel-900', sealed: true });
    expect(await mould('900 no. 2')).toMatchObject({
      condition: 'ready',
      prepped: true,
      setFor: 'panel-900',
      turnsSinceOil: 0,
    });
    const { plan } = await currentPlan(context);
    // One panel is wanted beside the finished one, and this is the only mould. 23 minutes of work and 20 of drying are over.
    expect(plan.pours.map(({ mould: id, prepStart, prepEnd }) => [id, prepStart === prepEnd])).toEqual([
      ['900 no. 2', true],
    ]);
  });

  test('is no mould that is full, out of use, or of another kind', async () => {
    const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('08:00') }];
    const base = plannedYard();
    const yard = plannedYard({
      yard: { ...base.yard, now: saturday('08:00') },
      inMould,
      moulds: [base.moulds[0]!, { ...base.moulds[1]!, condition: 'damaged' }],
    });
    const { context } = await on('08:45', yard);
    const say = async (mould: string, casting = 'panel-900') =>
      faultOf(await recordPrep(context, { mould, casting, sealed: false }))?.message;
    expect(await say('900 no. 1')).toContain('has a piece in it');
    expect(await say('900 no. 2')).toContain('is out of use');
    expect(await say('900 no. 3')).toContain('There is no mould');
  });
});

describe('stripped', () => {
  const cured = (hours: number) => {
    const base = plannedYard();
    const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:00'), order: '27-001' }];
    return plannedYard({
      yard: { ...base.yard, now: saturday('10:30') },
      mixes: [{ ...base.mixes[0]!, cureHours: hours }],
      inMould,
    });
  };

  test('leaves a piece that is fit to go out when its hours of curing are over, and a dirty mould', async () => {
    const { context, mould, pieces } = await on('10:30', cured(72));
    expect(await recordStrip(context, { mould: '900 no. 1', cameOut: 'good', reason: '' })).toMatchObject({ ok: true });
    expect(await pieces()).toMatchObject([
      { count: 1 },
      { casting: 'panel-900', count: 1, order: '27-001', readyAt: '2027-04-13T09:00:00+01:00' },
    ]);
    expect(await mould('900 no. 1')).toMatchObject({ piece: null, condition: 'dirty', prepped: false });
  });

  test('leaves a piece that is fit at once where it has cured in the mould', async () => {
    const { context, pieces } = await on('10:30', cured(1.5));
    await recordStrip(context, { mould: '900 no. 1', cameOut: 'good', reason: '' });
    expect((await pieces())[1]?.readyAt).toBeNull();
  });

  test('leaves no piece when it is not good, and the order is planned again', async () => {
    const { context, pieces } = await on('10:30', cured(0));
    const outcome = await recordStrip(context, { mould: '900 no. 1', cameOut: 'scrap', reason: '' });
    expect(await pieces()).toHaveLength(1);
    expect(outcome.ok && outcome.value.plan.pours.map(({ order }) => order)).toEqual(['27-001']);
  });

  test('leaves a damaged mould damaged', async () => {
    const { database, context, mould } = await on('10:30', cured(0));
    await database.write((tx) => updateMould(tx, '900 no. 1', { condition: 'damaged' }));
    await recordStrip(context, { mould: '900 no. 1', cameOut: 'good', reason: '' });
    expect((await mould('900 no. 1'))?.condition).toBe('damaged');
  });

  test('twice is refused', async () => {
    const { context } = await on('10:30', cured(0));
    await recordStrip(context, { mould: '900 no. 1', cameOut: 'good', reason: '' });
    expect(faultOf(await recordStrip(context, { mould: '900 no. 1', cameOut: 'good', reason: '' }))?.message).toContain(
      'has no piece in it',
    );
  });
});

describe('packed', () => {
  const yard = (count: number) => plannedYard({ finished: [{ casting: 'panel-900', count }] });

  test('takes pieces and cut lengths from stock, asks for nothing more, and waits to be handed over', async () => {
    const { database, context, pieces, onHand, offcuts } = await on('10:57', yard(3));
    const outcome = await packOrder(context, '27-001', { evenShort: false });
    expect(outcome).toMatchObject({ ok: true, value: { words: 'Packed for School garden' } });
    expect(await pieces()).toMatchObject([{ count: 1 }]);
    // Two pins of 300 mm and a cut of 3 mm each.
    expect(await onHand('rod')).toBe(2);
    expect(await offcuts('rod')).toEqual([{ lengthMm: 3000 - 2 * 303, count: 1 }]);
    const { plan } = await currentPlan(context);
    expect(plan.pours).toEqual([]);
    expect(plan.orders).toMatchObject([{ id: '27-001', completesOn: '2027-04-10' }]);
    expect((await database.read((tx) => orderById(tx, '27-001')))?.status).toBe('open');
  });

  test('is handed over without taking anything again', async () => {
    const { database, context, pieces, onHand } = await on('10:57', yard(3));
    await packOrder(context, '27-001', { evenShort: false });
    const rod = await onHand('rod');
    expect((await handOverOrder(context, '27-001', { evenShort: false })).ok).toBe(true);
    expect(await pieces()).toMatchObject([{ count: 1 }]);
    expect(await onHand('rod')).toBe(rod);
    expect((await database.read((tx) => orderById(tx, '27-001')))?.status).toBe('handed over');
  });

  test('is refused while pieces are missing or not fit to go out, unless they were counted', async () => {
    const finished = [
      { casting: 'panel-900', count: 1 },
      { casting: 'panel-900', count: 5, readyAt: saturday('11:00') },
    ];
    const { context, pieces } = await on('10:57', plannedYard({ finished }));
    expect(faultOf(await packOrder(context, '27-001', { evenShort: false }))).toEqual({
      path: 'evenShort',
      message:
        'By the stock book these are not in the yard, or not fit to go out yet: 1 × Panel 900. Nothing was packed.',
    });
    expect(await pieces()).toHaveLength(2);
    expect((await packOrder(context, '27-001', { evenShort: true })).ok).toBe(true);
  });

  test('comes apart again when it is unpacked', async () => {
    const { context, pieces, onHand, offcuts } = await on('10:57', yard(2));
    await packOrder(context, '27-001', { evenShort: false });
    expect(await pieces()).toEqual([]);
    expect((await unpackOrder(context, '27-001')).ok).toBe(true);
    expect(await pieces()).toMatchObject([{ casting: 'panel-900', count: 2, order: '27-001', readyAt: null }]);
    // The pins stay cut.
    expect(await onHand('rod')).toBe(2);
    expect(await offcuts('rod')).toEqual([
      { lengthMm: 2394, count: 1 },
      { lengthMm: 300, count: 2 },
    ]);
    expect(faultOf(await unpackOrder(context, '27-001'))?.message).toContain('is not packed');
  });

  test('is packed once only, which is what a second tap finds, and is not cancelled', async () => {
    const { context } = await on('10:57', yard(2));
    const first = doneOf(await packOrder(context, '27-001', { evenShort: false }));
    const second = doneOf(await packOrder(context, '27-001', { evenShort: true }));
    expect([second.change, second.words]).toEqual([first.change, 'Packed for School garden']);
    expect(faultOf(await cancelOrder(context, '27-001'))?.message).toBe(
      'Order 27-001 is packed. Unpack it on Today first. Nothing was changed.',
    );
    // Unpacked, it can be packed once more.
    await unpackOrder(context, '27-001');
    expect(doneOf(await packOrder(context, '27-001', { evenShort: false })).change).toBeGreaterThan(first.change);
  });
});
