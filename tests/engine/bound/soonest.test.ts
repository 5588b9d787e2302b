import { describe, expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile, YardFileInput } from '../../../shared/yard-file.ts';
import { soonestComplete } from '../../../src/engine/bound/soonest.ts';
import { calendarOf } from '../../../src/engine/calendar/calendar.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { NEVER } from '../../../src/engine/decoder/problem.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard, YARD_KINDS } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardWithFixedPours } from '../../support/yard-with-fixed-pours.ts';

const base = smallYard();
const soonest = (changes: Partial<YardFileInput> = {}): string => {
  const minute = soonestComplete(compile(smallYard(changes)), 0);
  return minute >= NEVER ? 'never' : calendarOf('Europe/Dublin').instantText(minute).slice(5, 16);
};
const pairs = (quantity: number) => [{ id: '27-001', lines: [{ kit: 'pair', quantity }] }];

describe('no sooner can an order be complete', () => {
  // 12 + 12 set up, mixed by 08:34, filled 08:41 and 08:48 by one person; hard 75 min later, stripped 8 min each, packed 5.
  // By itself each panel is filled at 08:29 and out at 09:52; by the hours 24 + 10 + 14 = 48 are worked first: filled 08:48,
  // hard 10:03, stripped 10:11, packed 10:16.
  test('than its pieces are set up, filled and stripped one after another, and it is packed', () => {
    expect(soonest()).toBe('04-10T10:16');
    expect(soonest({ work: [{ ...base.work[0]!, crew: 2 }] })).toBe('04-10T09:57');
  });

  // Four turns of two moulds: the last two are out at 11:50 by the moulds alone, and two pairs take 10 minutes to pack. There
  // is no time to set two more up that morning: a week later they are by 08:18, filled 08:35, hard 09:50, out 09:58.
  test('than its moulds come round', () => {
    expect(soonest({ orders: pairs(2), work: [{ ...base.work[0]!, crew: 2 }] })).toBe('04-10T12:00');
    expect(soonest({ orders: pairs(3), work: [{ ...base.work[0]!, crew: 2 }] })).toBe('04-17T10:13');
  });

  test('than what is set aside for others leaves over', () => {
    const finished = (order?: string) => [{ casting: 'panel-900', count: 2, ...(order ? { order } : {}) }];
    const other = { id: '27-002', lines: [{ kit: 'pair', quantity: 1 }] };
    const orders = [...pairs(1), other];
    expect(soonest({ orders, finished: finished() })).toBe('04-10T08:05');
    expect(soonest({ orders, finished: finished('27-001') })).toBe('04-10T08:05');
    expect(soonest({ orders, finished: finished('27-002') })).toBe('04-10T10:16');
  });

  test('than a sealing coat that is due has dried; one is due again after so many turns', () => {
    const coated = (turnsSinceOil: number) =>
      base.moulds.map((mould) => ({ ...mould, oilEveryTurns: 2, oilMinutes: 10, oilDryMinutes: 60, turnsSinceOil }));
    const work = [{ ...base.work[0]!, crew: 2 }];
    // Set up and coated by 08:22, dry at 09:22, mixed and filled by 09:39, out at 11:02.
    expect(soonest({ work, moulds: coated(2) })).toBe('04-10T11:07');
    expect(soonest({ work, moulds: coated(1) })).toBe('04-10T09:57');
    // The second turns would need a coat at 09:52: set up by 10:20, dry at 11:20, filled 11:37, stripped a week later and packed.
    expect(soonest({ work, orders: pairs(2), moulds: coated(1) })).toBe('04-17T08:18');
  });

  // Set up this Saturday, mixed the next: by 08:10, filled 08:17, hard 09:32, out 09:40, packed 09:45.
  test('than the weather lets a batch be made', () => {
    const mixes = [{ ...base.mixes[0]!, minCelsius: 5 }];
    const temperatures = [
      { from: '2027-04-01', celsius: 2 },
      { from: '2027-04-12', celsius: 20 },
    ];
    expect(soonest({ mixes, temperatures })).toBe('04-17T09:45');
  });

  test('than bags, rod and what is bought is there', () => {
    const mortar = (more: Partial<YardFileInput['materials'][number]>) =>
      base.materials.map((one) => (one.id === 'mortar' ? { ...one, onHand: 0, ...more } : one));
    const rod = (more: Partial<YardFileInput['materials'][number]>) =>
      base.materials.map((one) => (one.id === 'rod' ? { ...one, onHand: 0, ...more } : one));
    expect(soonest({ materials: mortar({}), incoming: [{ material: 'mortar', quantity: 1, on: '2027-04-13' }] })).toBe(
      '04-17T09:45',
    );
    expect(soonest({ materials: mortar({}) })).toBe('never');
    // Two panels of 13.6 kg are 27.2 of the 27.5 kg of a bag; with one mould it takes two batches, each a bag.
    expect(soonest({ materials: mortar({ onHand: 1 }) })).toBe('04-10T10:16');
    expect(soonest({ materials: mortar({ onHand: 1 }), moulds: [base.moulds[0]!] })).toBe('never');
    expect(soonest({ materials: rod({ leadDays: 3 }) })).toBe('04-17T08:05');
    // Nine rods of 300 mm and a kerf of 3 come of a stick of 3000; ten take a second.
    expect(soonest({ materials: rod({ leadDays: undefined, onHand: 1 }), orders: pairs(4) })).not.toBe('never');
    expect(soonest({ materials: rod({ leadDays: undefined, onHand: 1 }), orders: pairs(5) })).toBe('never');
  });
});

/** Orders of a plan that are complete before they can be. */
const sooner = (yard: YardFile): string[] => {
  const problem = compile(yard);
  return planYard(yard, { effort: 'quick' }).orders.flatMap((planned) => {
    const order = yard.orders.findIndex(({ id }) => id === planned.id);
    return minuteOf(planned.completesAt) < soonestComplete(problem, order) ? [planned.id] : [];
  });
};

describe('no plan is sooner', () => {
  test.each(YARD_KINDS)('on a %s yard', (kind) => {
    for (const seed of yardSeeds(12)) expect(sooner(randomYard(seed, kind)), `seed ${seed}`).toEqual([]);
  });

  test('with pours that are fixed', () => {
    for (const seed of yardSeeds(30)) {
      const yard = randomYard(seed, YARD_KINDS[seed % YARD_KINDS.length]!);
      const kept = yardWithFixedPours(yard, planYard(yard, { effort: 'quick' }), seed, seed % 3);
      expect(sooner(kept), `seed ${seed}`).toEqual([]);
    }
  });
});
