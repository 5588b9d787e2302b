import { describe, expect, test } from 'vitest';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { NEVER } from '../../../src/engine/decoder/problem.ts';
import { settle } from '../../../src/engine/decoder/settle.ts';
import { earliestOf } from '../../../src/engine/quote/earliest.ts';
import { completesIfFirst } from '../../../src/engine/quote/if-first.ts';
import { askingFor, daysLateOf, presentOf, withOrderAt } from '../../../src/engine/quote/present.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { datedYard } from '../../support/random-yard/dated-stock.ts';
import { randomYard } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';

const PLACES = 40;
const asked = (seed: number) => {
  const yard = datedYard(randomYard(seed, 'small'), seed);
  const order = { ...yard.orders[0]!, id: 'new' };
  return { present: presentOf(yard), asking: askingFor(yard, order) };
};

describe('the earliest completion beside what is promised', () => {
  test('is what its dispatch comes to, with no promise later', () => {
    let found = 0;
    for (const seed of yardSeeds(12)) {
      const { present, asking } = asked(seed);
      const { completesAt, dispatch } = earliestOf(asking, present, PLACES);
      if (completesAt >= NEVER) {
        expect(dispatch).toBe(null);
        continue;
      }
      settle(asking.state, dispatch!);
      expect(asking.state.orders.completesAt[asking.added], `seed ${seed}`).toBe(completesAt);
      const late = daysLateOf(asking.state);
      expect(present.daysLate.filter((days, o) => late[o]! > days)).toEqual([]);
      found++;
    }
    expect(found).toBeGreaterThan(6);
  });

  test('is no later than that at any place in the sequence which keeps the promises', () => {
    for (const seed of yardSeeds(12)) {
      const { present, asking } = asked(seed);
      const { completesAt } = earliestOf(asking, present, PLACES);
      const { sequence } = present.dispatch;
      for (let place = 0; place <= sequence.length; place++) {
        settle(asking.state, withOrderAt(present, place, asking.added));
        const late = daysLateOf(asking.state);
        const own = asking.state.orders.completesAt[asking.added]!;
        if (own >= 0 && present.daysLate.every((days, o) => late[o]! <= days))
          expect(completesAt).toBeLessThanOrEqual(own);
      }
    }
  });

  test('a longer search around the places is never later', () => {
    for (const seed of yardSeeds(10)) {
      const { present, asking } = asked(seed);
      const short = earliestOf(asking, present, PLACES, { share: 0 }).completesAt;
      expect(earliestOf(asking, present, PLACES, { share: 1 }).completesAt, `seed ${seed}`).toBeLessThanOrEqual(short);
    }
  });
});

test('before all others it is NEVER where it cannot be made at all', () => {
  const yard = smallYard({ moulds: smallYard().moulds.map((m) => ({ ...m, condition: 'retired' })), orders: [] });
  const order = { id: 'new', weight: 1, lines: [{ kit: 'pair', quantity: 1 }] };
  const asking = askingFor(yard, order);
  expect(completesIfFirst(order, asking)).toBe(NEVER);
  expect(earliestOf(asking, presentOf(yard), PLACES)).toEqual({ completesAt: NEVER, dispatch: null });
});

test('the order that is asked about comes last by index and has no date', () => {
  const yard = smallYard();
  const { problem, added } = askingFor(yard, { ...yard.orders[0]!, id: 'new', due: '2027-04-10' });
  expect([added, problem.orders[added]!.dueDay]).toEqual([1, NEVER]);
  expect(compile(yard).orders).toHaveLength(1);
});
