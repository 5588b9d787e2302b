import { describe, expect, test } from 'vitest';
import { materialsInOrder } from '../../../db/stores/material-store.ts';
import { mouldById } from '../../../db/stores/mould-store.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { countMaterial } from '../../../src/usecases/buying/count-material.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { packOrder } from '../../../src/usecases/orders/pack-order.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { recordPour } from '../../../src/usecases/today/record-pour.ts';
import { recordStrip } from '../../../src/usecases/today/record-strip.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const full = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('09:00') }];
const on = async (clock: string, changes: Partial<YardFileInput> = {}) => {
  const yard = plannedYard({ yard: { ...plannedYard().yard, now: saturday(clock) }, ...changes });
  const { database } = await yardContext(yard);
  const at = (later: string) => ({ database, now: saturday(later) });
  const stock = (id: string) => database.read(async (tx) => (await materialsInOrder(tx)).find((one) => one.id === id)!);
  return { database, at, stock };
};
const good = { mould: '900 no. 1', cameOut: 'good' as const, reason: '' };
const filled = { mould: '900 no. 1', casting: 'panel-900', order: null, sealed: false };

/* A panel of 9:00 is stripped from 10:15, 75 minutes later. */
describe('a piece stripped before its time', () => {
  test.each([
    ['09:10', '65 minutes'],
    ['09:59', '15 minutes'],
  ])('at %s is asked about: %s early', async (clock, early) => {
    const { at } = await on(clock, { inMould: full });
    const asked = await recordStrip(at(clock), good);
    expect(refusalOf(asked)).toMatch(new RegExp(`^sure-early: That is ${early} before it has set`));
    expect((await recordStrip(at(clock), { ...good, sure: ['early'] })).ok).toBe(true);
  });

  test('by a quarter of an hour is not asked about, nor is one that is no good', async () => {
    const one = await on('10:00', { inMould: full });
    expect((await recordStrip(one.at('10:00'), good)).ok).toBe(true);
    const other = await on('09:10', { inMould: full });
    expect((await recordStrip(other.at('09:10'), { ...good, cameOut: 'scrap' })).ok).toBe(true);
  });

  test('and recorded hours later, by its own time, is asked about as well', async () => {
    const { at } = await on('15:00', { inMould: full });
    expect(refusalOf(await recordStrip(at('15:00'), { ...good, at: '09:30' }))).toMatch(/^sure-early/);
    expect((await recordStrip(at('15:00'), { ...good, at: '10:20' })).ok).toBe(true);
  });
});

test('a batch that is tapped before it is to be mixed is asked about', async () => {
  const { at } = await on('08:00');
  const { steps } = await showToday(at('08:00'));
  const batch = steps.find((step) => step.kind === 'batch');
  if (batch?.kind !== 'batch') throw new Error('no batch');
  const record = { pours: batch.pours, bags: batch.bags, filledAt: null, step: batch.name };
  expect(refusalOf(await recordPour(at('08:05'), record))).toMatch(
    /^sure-unmixed: By the plan it is mixed from 8:\d\d/,
  );
  expect((await recordPour(at('08:05'), { ...record, sure: ['unmixed'] })).ok).toBe(true);
});

describe('more than the stock book has', () => {
  test('is said in words where it has none', async () => {
    const { at } = await on('10:00');
    await countMaterial(at('10:00'), 'mesh', { text: '0' });
    const record = { pours: [filled], bags: 1, filledAt: null };
    expect(refusalOf(await recordPour(at('10:01'), record))).toContain('Mesh (none in the book, 0.16 taken)');
  });

  test('is asked about at a pour, and what is missing is kept until it is counted', async () => {
    const { at, stock } = await on('10:00');
    await countMaterial(at('10:00'), 'mesh', { text: '0.1' });
    const record = { pours: [filled], bags: 1, filledAt: null };
    expect(refusalOf(await recordPour(at('10:01'), record))).toBe(
      'sure-short: By the stock book there is too little Mesh (0.1 m2 in the book, 0.16 taken). Was it there anyway? Then it is to be counted.',
    );
    const { change } = doneOf(await recordPour(at('10:01'), { ...record, sure: ['short'] }));
    expect(await stock('mesh')).toMatchObject({ onHand: 0 });
    expect((await stock('mesh')).shortBy).toBeCloseTo(0.06, 9);
    await undoChange(at('10:02'), change);
    expect(await stock('mesh')).toMatchObject({ onHand: 0.1, shortBy: 0 });
  });

  test('is asked about at a packing', async () => {
    const { at, stock } = await on('10:57', { finished: [{ casting: 'panel-900', count: 2 }] });
    await countMaterial(at('10:57'), 'rod', { text: '0' });
    expect(refusalOf(await packOrder(at('10:58'), '27-001', { evenShort: false }))).toMatch(
      /^sure-short: .* Rod 12 mm/,
    );
    doneOf(await packOrder(at('10:58'), '27-001', { evenShort: false, sure: ['short'] }));
    expect((await showToday(at('10:59'))).toCount).toMatchObject([{ material: 'rod' }]);
    // Counting what the book says already answers it all the same.
    doneOf(await countMaterial(at('11:00'), 'rod', { text: '0' }));
    expect(await stock('rod')).toMatchObject({ onHand: 0, shortBy: 0 });
  });
});

describe('work of an earlier day', () => {
  const monday = '2027-04-12T09:00:00+01:00';

  test('is recorded by its day and time', async () => {
    const { database } = await on('08:00');
    doneOf(await recordPour({ database, now: monday }, { pours: [filled], bags: 1, filledAt: '2027-04-10 09:40' }));
    const piece = async () => (await database.read((tx) => mouldById(tx, '900 no. 1')))?.piece ?? null;
    expect((await piece())?.filledAt).toBe(saturday('09:40'));
    const words = doneOf(await recordStrip({ database, now: monday }, { ...good, at: '2027-04-10 11:00' })).words;
    expect(words).toBe('900 no. 1 stripped on Sat 10 Apr at 11:00');
    expect(await piece()).toBeNull();
  });

  test.each([
    ['2027-04-12 09:01', 'time: That time is still to come.'],
    ['2027-04-31 09:00', 'time: When? Write a time such as 10:45. Nothing was changed.'],
  ])('at %s is refused', async (filledAt, why) => {
    const { database } = await on('08:00');
    expect(refusalOf(await recordPour({ database, now: monday }, { pours: [filled], bags: 1, filledAt }))).toBe(why);
  });

  test('is refused before its mould was emptied', async () => {
    const { database } = await on('08:00', { inMould: [{ ...full[0]!, filledAt: '2027-04-09T09:00:00+01:00' }] });
    const at = { database, now: monday };
    doneOf(await recordStrip(at, { ...good, at: '2027-04-10 09:30' }));
    const poured = (filledAt: string) => recordPour(at, { pours: [filled], bags: 1, filledAt });
    // It takes 7 minutes to fill.
    expect(refusalOf(await poured('2027-04-10 09:36'))).toBe('filledAt: 900 no. 1 was emptied only at 9:30.');
    expect((await poured('2027-04-10 09:37')).ok).toBe(true);
  });

  test('poured later than planned has what comes after it later in the list, and is answered itself', async () => {
    const { database } = await on('07:30');
    await currentPlan({ database, now: saturday('07:30') });
    const lines = async () => (await showToday({ database, now: monday })).late.flatMap((session) => session.lines);
    const [batch] = (await lines()).filter(({ step }) => step.kind === 'batch');
    if (batch?.step.kind !== 'batch') throw new Error('no batch');
    const { pours, bags } = batch.step;
    const planned = (await lines()).find(({ step }) => step.kind === 'strip')!.step.at;
    doneOf(
      await recordPour({ database, now: monday }, { pours, bags, filledAt: '2027-04-10 09:40', step: batch.name }),
    );
    const after = await lines();
    expect(after.map(({ step }) => step.kind)).not.toContain('batch');
    const strip = after.find(({ step }) => step.kind === 'strip')!.step.at;
    const full = Math.max(...pours.map(({ until }) => Date.parse(until)));
    expect(Date.parse(strip) - Date.parse(planned)).toBe(Date.parse(saturday('09:40')) - full);
  });
});

test('a tap from a second page finds what the first one recorded, and changes nothing', async () => {
  const { at } = await on('10:30', { inMould: full });
  const first = doneOf(await recordStrip(at('10:30'), { ...good, step: 'piece 1' }));
  const second = doneOf(await recordStrip(at('10:45'), { ...good, step: 'piece 1' }));
  expect([second.change, second.words]).toEqual([first.change, '900 no. 1 stripped']);
  // Undone, it can be recorded again.
  await undoChange(at('10:46'), first.change);
  expect(doneOf(await recordStrip(at('10:47'), { ...good, step: 'piece 1' })).change).toBeGreaterThan(first.change);
});
