import { describe, expect, test } from 'vitest';
import { updateOrder } from '../../../db/stores/order-store.ts';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { packOrder } from '../../../src/usecases/orders/pack-order.ts';
import { currentPlan } from '../../../src/usecases/plan/make-plan.ts';
import { recordPour } from '../../../src/usecases/today/record-pour.ts';
import { recordStrip } from '../../../src/usecases/today/record-strip.ts';
import { showToday } from '../../../src/usecases/today/show-today.ts';
import { doneOf, refusalOf } from '../../support/outcomes.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const MONDAY = '2027-04-12T09:00:00+01:00';

/** The planned yard, planned on Saturday at 7:30 and looked at on Monday. */
const monday = async (changes: Partial<YardFileInput> = {}) => {
  const { database } = await yardContext(plannedYard(changes));
  await currentPlan({ database, now: saturday('07:30') });
  const at = { database, now: MONDAY };
  const batch = async () => {
    const lines = (await showToday(at)).late.flatMap((session) => session.lines);
    const step = lines.map((line) => line.step).find(({ kind }) => kind === 'batch');
    if (step?.kind !== 'batch') throw new Error('no batch');
    return { pours: step.pours, bags: step.bags, step: step.name };
  };
  return { at, batch };
};
const filled = { mould: '900 no. 1', casting: 'panel-900', order: null, sealed: false };
const other = { pours: [filled], bags: 1 };
const good = { mould: '900 no. 1', cameOut: 'good' as const, reason: '' };

describe('a pour told of a day far off is asked about', () => {
  test.each([
    ['2027-04-03 09:40', 'By the plan it is done on Sat 10 Apr. Was it really done on Sat 3 Apr?'],
    ['2026-04-10 09:40', 'By the plan it is done on Sat 10 Apr. Was it really done on Fri 10 Apr 2026?'],
    ['2027-04-09 20:00', 'By the plan it is done on Sat 10 Apr. Was it really done on Fri 9 Apr?'],
  ])('of the plan: %s', async (filledAt, question) => {
    const { at, batch } = await monday();
    const record = { ...(await batch()), filledAt };
    expect(refusalOf(await recordPour(at, record))).toBe(`sure-day: ${question}`);
    expect((await recordPour(at, { ...record, sure: ['day'] })).ok).toBe(true);
  });

  test('another one, of more than a week ago', async () => {
    const { at } = await monday();
    expect(refusalOf(await recordPour(at, { ...other, filledAt: '2026-04-12 09:00' }))).toBe(
      'sure-day: That is 12 months ago. Was it really done on Sun 12 Apr 2026?',
    );
    const { words } = doneOf(await recordPour(at, { ...other, filledAt: '2026-04-12 09:00', sure: ['day'] }));
    expect(words).toBe('900 no. 1 poured on Sun 12 Apr 2026 at 9:00');
  });

  test('another one, of before all that is recorded', async () => {
    const { at } = await monday();
    const told = (filledAt: string) => recordPour(at, { ...other, filledAt });
    doneOf(
      await recordPour(at, { ...other, pours: [{ ...filled, mould: '900 no. 2' }], filledAt: '2027-04-10 09:00' }),
    );
    expect(refusalOf(await told('2027-04-09 19:00'))).toBe(
      'sure-day: The first thing recorded here was done on Sat 10 Apr. Was it really done on Fri 9 Apr?',
    );
    expect((await told('2027-04-10 08:00')).ok).toBe(true);
  });

  test('but not one of its own day, however long ago that is, nor another of some days ago', async () => {
    const { at, batch } = await monday();
    const late = { ...at, now: '2027-05-10T09:00:00+01:00' };
    const words = doneOf(await recordPour(late, { ...(await batch()), filledAt: '2027-04-10 09:40' })).words;
    expect(words).toBe('900 no. 1 poured on Sat 10 Apr at 9:40');
    const early = await monday();
    const sooner = { ...(await early.batch()), filledAt: '2027-04-10 08:05' };
    expect(refusalOf(await recordPour(early.at, sooner))).toMatch(/^sure-unmixed: /);
    expect((await recordPour(early.at, { ...sooner, sure: ['unmixed'] })).ok).toBe(true);
    const once = await monday();
    expect((await recordPour(once.at, { ...other, filledAt: '2027-04-07 09:00' })).ok).toBe(true);
  });
});

test('a strip told of a year ago is asked about, and one of Saturday says so', async () => {
  const { at } = await monday({
    inMould: [{ mould: '900 no. 1', casting: 'panel-900', filledAt: '2025-04-01T09:00:00+01:00' }],
  });
  expect(refusalOf(await recordStrip(at, { ...good, at: '2026-04-10 11:00' }))).toMatch(
    /^sure-day: By the plan it is done on Sat 10 Apr\. Was it really done on Fri 10 Apr 2026\?$/,
  );
  const words = doneOf(await recordStrip(at, { ...good, at: '2027-04-10 11:00' })).words;
  expect(words).toBe('900 no. 1 stripped on Sat 10 Apr at 11:00');
});

test('a packing told of before its order was taken is asked about, and one of Saturday says so', async () => {
  const { at } = await monday({ finished: [{ casting: 'panel-900', count: 2 }] });
  await at.database.write((tx) => updateOrder(tx, '27-001', { takenAt: '2027-04-09T09:00:00+01:00' }));
  const told = (day: string) => ({ evenShort: false, at: `${day} 11:00` });
  expect(refusalOf(await packOrder(at, '27-001', told('2027-04-08')))).toBe(
    'sure-day: Its order was taken on Fri 9 Apr. Was it really done on Thu 8 Apr?',
  );
  const { words } = doneOf(await packOrder(at, '27-001', told('2027-04-10')));
  expect(words).toBe('Packed for School garden on Sat 10 Apr at 11:00');
});
