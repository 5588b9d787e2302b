import { describe, expect, test } from 'vitest';
import type { PlanFile } from '../../../shared/plan.ts';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { batchHeldUp, withBatchBegun } from '../../../src/engine/book/begin-batch.ts';
import { shiftLater } from '../../../src/engine/book/shift-later.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';

const clockOf = (instant: string | undefined) => instant?.slice(11, 16);

/** The planned yard at a time, both moulds set up. */
const yardAt = (clock: string, changes: Partial<YardFile> = {}): YardFile => {
  const yard = plannedYard();
  const moulds = yard.moulds.map((mould) => ({ ...mould, condition: 'ready' as const, prepped: true }));
  return { ...yard, yard: { ...yard.yard, now: saturday(clock) }, moulds, ...changes };
};

const mixOf = ({ batches, pours }: PlanFile) => ({ batch: batches[0]!, pours });

const begunAt = (clock: string, plan = handPlan()): PlanFile =>
  withBatchBegun(plan, mixOf(plan), minuteOf(saturday(clock)), yardAt(clock));

describe('a batch of 9:05', () => {
  /* Five minutes sooner: mixed by 9:10, full at 9:17 and 9:24. Its strips stay where they were. */
  test('begun at 9:00 has its pours sooner, and nothing else', () => {
    const { batches, pours } = begunAt('09:00');
    expect(batches.map(({ start, mixEnd, end }) => [start, mixEnd, end].map(clockOf))).toEqual([
      ['09:00', '09:10', '09:24'],
    ]);
    expect(pours.map(({ prepEnd, fillStart, fillEnd }) => [prepEnd, fillStart, fillEnd].map(clockOf))).toEqual([
      ['08:22', '09:10', '09:17'],
      ['09:05', '09:17', '09:24'],
    ]);
    expect(pours.map(({ stripStart }) => clockOf(stripStart))).toEqual(['10:37', '10:44']);
  });

  /* Full at 9:29 and 9:36: out from 10:44 and 10:51. One person strips to 10:52 and to 11:00, and packs to 11:05. */
  test('begun at 9:12 has what comes after it later, as far as it must', () => {
    const plan = shiftLater(begunAt('09:12'), yardAt('09:12'));
    expect(plan?.pours.map(({ fillEnd, stripStart }) => [fillEnd, stripStart].map(clockOf))).toEqual([
      ['09:29', '10:44'],
      ['09:36', '10:52'],
    ]);
    expect([plan?.orders[0]?.packStart, plan?.orders[0]?.completesAt].map(clockOf)).toEqual(['11:00', '11:05']);
  });

  test('has set-ups that are none at its new time, and its sticks by then', () => {
    const plan = handPlan();
    plan.pours[0] = { ...plan.pours[0]!, prepStart: saturday('09:05'), prepEnd: saturday('09:05') };
    plan.sticks = [{ material: 'rod', openedAt: saturday('09:05'), cuts: [{ lengthMm: 300, count: 2, for: 'B1' }] }];
    const { pours, sticks } = begunAt('09:00', plan);
    expect([pours[0]?.prepStart, pours[0]?.prepEnd, sticks[0]?.openedAt].map(clockOf)).toEqual([
      '09:00',
      '09:00',
      '09:00',
    ]);
  });
});

describe('a batch can begin', () => {
  const held = (yard: YardFile, plan = handPlan()) => batchHeldUp(yard, plan, mixOf(plan));
  const notSetUp = yardAt('09:05').moulds.map((mould, place) => (place === 0 ? mould : { ...mould, prepped: false }));

  test('with its moulds set up', () => {
    expect(held(yardAt('09:05'))).toBeNull();
  });

  test('not before the sealing coat is dry', () => {
    const wet = yardAt('09:04').moulds.map((mould) => ({ ...mould, dryFrom: saturday('09:05') }));
    expect(held(yardAt('09:04', { moulds: wet }))).toBe('The sealing coat of 900 no. 1 dries until 9:05.');
    expect(held(yardAt('09:05', { moulds: wet }))).toBeNull();
  });

  test('not in a mould that is not set up, is full, or is out of use', () => {
    expect(held(yardAt('09:05', { moulds: notSetUp }))).toBe(
      '900 no. 2 is not set up yet. Mark it ready to pour first.',
    );
    const inMould = [{ mould: '900 no. 1', casting: 'panel-900', filledAt: saturday('08:00') }];
    expect(held(yardAt('09:05', { inMould }))).toBe('900 no. 1 has a piece in it. Strip it first.');
    const damaged = yardAt('09:05').moulds.map((mould) => ({ ...mould, condition: 'damaged' as const }));
    expect(held(yardAt('09:05', { moulds: damaged }))).toBe('900 no. 1 is out of use. Mark it mended first.');
  });

  test('not while another batch is in the mixer, or in its mould', () => {
    const other = { ...handPlan().batches[0]!, id: 'B0', start: saturday('08:58'), mixEnd: saturday('09:08') };
    const none = { strips: [], packs: [], preps: [], coats: [] };
    const begun = { batches: [other], pours: [], ...none };
    expect(held(yardAt('09:05', { begun }))).toBe('The mixer is busy with another batch until 9:08.');
    const two = yardAt('09:05', { begun });
    expect(held({ ...two, yard: { ...two.yard, mixers: 2 } })).toBeNull();
    const pours = [{ ...handPlan().pours[0]!, id: 'P0', batch: 'B0' }];
    expect(held({ ...two, begun: { ...begun, pours } })).toBe('900 no. 1 has a piece in it. Strip it first.');
  });

  test('not before the turn that comes first in its mould', () => {
    const plan = handPlan();
    const [first] = plan.pours;
    const early = { prepStart: saturday('08:00'), prepEnd: saturday('08:05'), fillEnd: saturday('09:06') };
    plan.pours.push({ ...first!, id: 'P0', batch: 'B0', ...early });
    const own = { batch: plan.batches[0]!, pours: plan.pours.slice(0, 2) };
    expect(batchHeldUp(yardAt('09:05'), plan, own)).toBe(
      'Another piece comes before it in 900 no. 1. Record that first.',
    );
  });
});
