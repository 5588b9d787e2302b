import { describe, expect, test } from 'vitest';
import { minuteOf } from '../../../shared/time.ts';
import type { YardFile } from '../../../shared/yard-file.ts';
import { standingPours } from '../../../src/usecases/plan/standing-pours.ts';
import { handPlan, plannedYard, saturday } from '../../support/planned-yard.ts';

const NOTHING = { batches: [], pours: [] };
const order = plannedYard().orders[0]!;
/** Two days before the session, with these orders in the book. */
const yardOf = (...ids: string[]): YardFile => ({ ...plannedYard(), orders: ids.map((id) => ({ ...order, id })) });
/** The plan by hand, a minute of washing after its last fill, no. 1 for one order and no. 2 for another. */
const planFor = (first: string, second?: string) => {
  const plan = handPlan();
  const [one, two] = plan.pours as [(typeof plan.pours)[0], (typeof plan.pours)[0]];
  return {
    ...plan,
    batches: plan.batches.map((batch) => ({ ...batch, end: saturday('09:30') })),
    pours: [{ ...one, order: first }, second === undefined ? two : { ...two, order: second }],
  };
};
const standing = (yard: YardFile, plan = planFor('a', 'b'), fixed: Parameters<typeof standingPours>[1] = NOTHING) =>
  standingPours({ yard, plan, hours: 0, clock: minuteOf(yard.yard.now) }, fixed);

describe('the pours that stand', () => {
  test('are those of the plan, however far ahead, each for its order', () => {
    const kept = standing(yardOf('a', 'b'));
    expect(kept?.batches).toEqual(planFor('a', 'b').batches);
    expect(kept?.pours.map(({ id, order: whose, fillEnd }) => [id, whose, fillEnd])).toEqual([
      ['P1', 'a', saturday('09:22')],
      ['P2', 'b', saturday('09:29')],
    ]);
  });

  test('are none before there is a plan', () => {
    const yard = yardOf('a');
    expect(standingPours({ yard, plan: null, hours: 0, clock: minuteOf(yard.yard.now) }, NOTHING)).toBeNull();
  });

  /* No. 2 is filled first then, from 9:15 for seven minutes, and the batch is washed up by 9:23. */
  test('leave out those for an order that is gone, and fill the others from the same start', () => {
    const kept = standing(yardOf('b'));
    expect(kept?.pours).toMatchObject([
      { id: 'P2', order: 'b', fillStart: saturday('09:15'), fillEnd: saturday('09:22') },
    ]);
    expect(kept?.batches).toMatchObject([{ pours: ['P2'], start: saturday('09:05'), end: saturday('09:23') }]);
  });

  test('are no batch at all where all of it was for orders that are gone', () => {
    expect(standing(yardOf('c'))).toEqual({ ...NOTHING, strips: [], packs: [] });
  });

  test('leave out those for nobody: what is to stand ready is planned behind everything each time', () => {
    expect(standing(yardOf('a'), planFor('a'))?.pours.map(({ id, order: whose }) => [id, whose])).toEqual([
      ['P1', 'a'],
    ]);
  });

  /* No. 2 gets its coat at 8:22 for the pour of Saturday; the one of a week later comes after that one, without a coat. */
  test('keep the coat before a pour that is gone where a later one needs it, and none that nothing comes after', () => {
    const plan = planFor('b', 'a');
    const week = (instant: string) => instant.replace('04-10', '04-17');
    const [batch, pour] = [plan.batches[0]!, plan.pours[1]!];
    const times = Object.fromEntries(
      Object.entries(pour).map(([name, value]) => [name, typeof value === 'string' ? week(value) : value]),
    ) as typeof pour;
    const later = { ...times, id: 'P3', batch: 'B2', order: 'b' };
    const next = { ...batch, id: 'B2', pours: ['P3'], ...{ start: week(batch.start), mixEnd: week(batch.mixEnd) } };
    const both = {
      ...plan,
      batches: [...plan.batches, { ...next, end: week(batch.end) }],
      pours: [...plan.pours, later],
    };
    expect(standing(yardOf('a', 'b'), both)?.coats).toEqual(plan.coats);
    expect(standing(yardOf('b'), both)?.coats).toEqual(plan.coats);
    expect(standing(yardOf('b'), plan)?.coats).toBeUndefined();
  });

  test('that are fixed stay whole, for nobody where their order is gone', () => {
    const plan = planFor('a', 'b');
    const kept = standing(yardOf('b'), plan, { batches: plan.batches, pours: plan.pours });
    expect(kept?.batches).toEqual(plan.batches);
    expect(kept?.pours.map(({ id, order: whose, fillEnd }) => [id, whose, fillEnd])).toEqual([
      ['P1', undefined, saturday('09:22')],
      ['P2', 'b', saturday('09:29')],
    ]);
  });
});
