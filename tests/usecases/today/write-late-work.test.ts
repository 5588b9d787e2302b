import { describe, expect, test } from 'vitest';
import type { Database } from '../../../db/open.ts';
import { recentChanges } from '../../../db/stores/change-store.ts';
import { finishedPieces } from '../../../db/stores/finished-store.ts';
import { materialsInOrder } from '../../../db/stores/material-store.ts';
import { mouldsInOrder } from '../../../db/stores/mould-store.ts';
import { storedPlan } from '../../../db/stores/plan-store.ts';
import { countMaterial } from '../../../src/usecases/buying/count-material.ts';
import { undoChange } from '../../../src/usecases/changes/undo-change.ts';
import { markMould } from '../../../src/usecases/moulds/mark-mould.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { writeLateWork } from '../../../src/usecases/today/write-late-work.ts';
import { demoSaturday, namesOf } from '../../support/demo-saturday.ts';
import { doneOf } from '../../support/outcomes.ts';

/** Everything that work writes down. */
const bookOf = (database: Database) =>
  database.read(async (tx) => ({
    moulds: await mouldsInOrder(tx),
    finished: await finishedPieces(tx),
    stock: (await materialsInOrder(tx)).map(({ id, onHand }) => [id, onHand]),
  }));

const writtenAt = async ({ context }: Awaited<ReturnType<typeof demoSaturday>>, clock: string) => {
  const outcome = await writeLateWork(context(clock));
  if (!outcome.ok) throw new Error(outcome.faults[0]?.message);
  return outcome.value;
};

describe('all late work written down as planned', () => {
  test('is one change: the list is empty, no date moves, and the plan goes on as it was', async () => {
    const day = await demoSaturday();
    const { database, late, days } = day;
    const [steps, planned] = [await late('13:40'), await days('13:40')];
    const made = (await database.read(storedPlan))?.madeAt;
    const { words, moved } = await writtenAt(day, '13:45');
    const pours = steps.flatMap((step) => (step.kind === 'batch' ? step.pours : [])).length;
    const strips = steps.filter(({ kind }) => kind === 'strip').length;
    expect(words).toMatch(new RegExp(`^${pours} pieces poured, ${strips} stripped,.* as planned$`));
    expect(moved).toEqual([]);
    expect((await database.read((tx) => recentChanges(tx, 9))).map(({ kind }) => kind)).toEqual(['as planned']);
    expect(await late('13:46')).toEqual([]);
    expect(await days('13:46')).toEqual(planned);
    expect((await database.read(storedPlan))?.madeAt).toBe(made);
  });

  test('is undone in one: the book is as it was, and the list is back', async () => {
    const day = await demoSaturday();
    const { database, context, late, days } = day;
    const [steps, planned, book] = [await late('13:40'), await days('13:40'), await bookOf(database)];
    const { change } = await writtenAt(day, '13:45');
    expect(await bookOf(database)).not.toEqual(book);
    const after = await bookOf(database);
    const undone = await undoChange(context('13:50'), change);
    expect(undone).toMatchObject({ ok: true, value: { moved: [] } });
    expect(await bookOf(database)).toEqual(book);
    expect(namesOf(await late('13:51'))).toEqual(namesOf(steps));
    expect(await days('14:29')).toEqual(planned);
    if (!undone.ok) return;
    await undoChange(context('13:55'), undone.value.change);
    expect(await bookOf(database)).toEqual(after);
    expect(await late('13:56')).toEqual([]);
    expect(await days('14:30')).toEqual(planned);
  });

  test('undone hours later, it is back all the same', async () => {
    const day = await demoSaturday();
    const { context, late } = day;
    const steps = await late('13:40');
    const { change } = await writtenAt(day, '13:45');
    expect((await undoChange(context('16:20'), change)).ok).toBe(true);
    expect(namesOf(await late('16:21'))).toEqual(namesOf(steps));
  });

  test('is refused as a whole at a batch whose mould was damaged since, and nothing is written down', async () => {
    const { database, context, lines } = await demoSaturday();
    const [batch] = (await lines('13:40')).filter(({ step }) => step.kind === 'batch');
    if (batch?.step.kind !== 'batch') throw new Error('no batch');
    const mould = batch.step.pours[0]?.mould ?? '';
    const marked = await markMould(context('13:41'), mould, 'damaged', { note: '', repairedOn: null, cameOut: null });
    expect(marked.ok).toBe(true);
    const book = await bookOf(database);
    const outcome = await writeLateWork(context('13:45'));
    const message = `${mould} is marked damaged. If it was poured before that, record this batch by itself.`;
    expect(outcome).toEqual({ ok: false, faults: [{ path: batch.name, message }] });
    expect((await lines('13:46')).map(({ name }) => name)).toContain(batch.name);
    expect(await bookOf(database)).toEqual(book);
  });

  test('a mould that was damaged and is mended by then holds nothing up', async () => {
    const { database, context, lines } = await demoSaturday();
    const [batch] = (await lines('13:40')).filter(({ step }) => step.kind === 'batch');
    if (batch?.step.kind !== 'batch') throw new Error('no batch');
    const damaged = { note: '', repairedOn: '2027-04-11', cameOut: null };
    doneOf(await markMould(context('13:41'), batch.step.pours[0]!.mould, 'damaged', damaged));
    expect((await writeLateWork(context('13:45'))).ok).toBe(false);
    const sunday = { database, now: '2027-04-11T09:00:00+01:00' };
    expect(doneOf(await writeLateWork(sunday)).words).toMatch(/as planned on Sat 10 Apr$/);
  });

  test('asks where the stock book has too little, and keeps what was taken beyond it until it is counted', async () => {
    const { database, context, late } = await demoSaturday();
    const bags = (await late('13:40')).reduce((sum, step) => sum + (step.kind === 'batch' ? step.bags : 0), 0);
    const mortar = async () => (await database.read(materialsInOrder)).find(({ unit }) => unit === 'bag')!;
    const { id, name } = await mortar();
    await countMaterial(context('13:41'), id, { text: '1' });
    const book = await bookOf(database);
    const asked = await writeLateWork(context('13:45'));
    expect(asked).toMatchObject({ ok: false, faults: [{ path: 'sure-short' }] });
    if (!asked.ok) expect(asked.faults[0]?.message).toContain(`there is too little ${name} (`);
    expect(await bookOf(database)).toEqual(book);
    const { change } = doneOf(await writeLateWork(context('13:45'), { session: null, sure: ['short'] }));
    const { onHand, shortBy } = await mortar();
    expect(onHand).toBe(0);
    expect(shortBy).toBeGreaterThan(0);
    expect(shortBy).toBeLessThan(bags);
    expect((await showToday(context('13:46'))).toCount).toMatchObject([{ material: id, name, shortBy }]);
    await undoChange(context('13:47'), change);
    expect(await mortar()).toMatchObject({ onHand: 1, shortBy: 0 });
    await writeLateWork(context('13:48'), { session: null, sure: ['short'] });
    await countMaterial(context('13:49'), id, { text: '0' });
    expect((await showToday(context('13:50'))).toCount).toEqual([]);
  });

  test('tapped twice is recorded once, and the second tap finds what the first did', async () => {
    const day = await demoSaturday();
    const [first] = await day.lines('13:40');
    const asPlanned = { session: null, step: first!.name };
    const once = doneOf(await writeLateWork(day.context('13:45'), asPlanned));
    const again = doneOf(await writeLateWork(day.context('13:46'), asPlanned));
    expect([again.change, again.words]).toEqual([once.change, once.words]);
    expect(await day.late('13:47')).toEqual([]);
  });

  test('says that there is nothing left', async () => {
    const day = await demoSaturday();
    await writtenAt(day, '14:40');
    expect(await writeLateWork(day.context('14:41'))).toEqual({
      ok: false,
      faults: [{ path: 'late', message: 'There is nothing left to be recorded as planned. Nothing was changed.' }],
    });
  });
});
