import { describe, expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { materialUses, materialUsesYielding } from '../../../src/usecases/buying/material-uses.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';
import { scaledYard } from '../../support/scaled-yard.ts';

describe('what a plan takes from stock', () => {
  const uses = materialUses(plannedYard(), handPlan());

  test('bags at the start of the batch, for all its pieces', () => {
    expect(uses.get('mortar')).toEqual([{ at: minuteOf(saturday('09:05')), quantity: 1, orders: ['27-001', null] }]);
  });

  test('what goes into each piece, for its own order or for stock', () => {
    expect(uses.get('mesh')?.map(({ quantity, orders }) => [quantity, orders])).toEqual([
      [0.16, ['27-001']],
      [0.16, [null]],
    ]);
  });

  test('a stick when it is opened, for those it is cut for', () => {
    expect(uses.get('rod')).toEqual([{ at: minuteOf(saturday('10:52')), quantity: 1, orders: ['27-001'] }]);
  });

  test('the sleeves of a batch are for the orders of its pours', () => {
    const plan = handPlan();
    plan.sticks = [{ material: 'rod', openedAt: saturday('09:05'), cuts: [{ lengthMm: 190, count: 4, for: 'B1' }] }];
    expect(materialUses(plannedYard(), plan).get('rod')?.[0]?.orders).toEqual(['27-001', null]);
  });

  test('parts when the order is packed, in order of time', () => {
    const yard = plannedYard({ orders: [{ id: '27-001', lines: [{ material: 'mesh', quantity: 2 }] }] });
    expect(materialUses(yard, handPlan()).get('mesh')?.at(-1)).toEqual({
      at: minuteOf(saturday('10:52')),
      quantity: 2,
      orders: ['27-001'],
    });
  });

  test('is the same when others are let in meanwhile', async () => {
    const yard = scaledYard(60, 12);
    const plan = planYard(yard, { effort: 'quick' });
    const inSteps = await materialUsesYielding(yard, plan);
    expect(inSteps).toEqual(materialUses(yard, { ...plan }));
    expect(materialUses(yard, plan)).toBe(inSteps);
  });

  test('is the same for the same plan of the same yard, and another one for other figures of it', () => {
    const [plan, yard] = [handPlan(), plannedYard()];
    const first = materialUses(yard, plan);
    expect(materialUses({ ...yard, yard: { ...yard.yard, now: saturday('08:30') } }, plan)).toBe(first);
    const castings = yard.castings.map((casting) => ({ ...casting, perPiece: [{ material: 'mesh', quantity: 1 }] }));
    expect(
      materialUses({ ...yard, castings }, plan)
        .get('mesh')
        ?.map(({ quantity }) => quantity),
    ).toEqual([1, 1]);
    expect(materialUses(yard, plan)).toEqual(first);
  });
});
