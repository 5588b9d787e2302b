import { describe, expect, test } from 'vitest';
import { dayNumber } from '../../../shared/time.ts';
import type { YardFile, YardFileInput } from '../../../shared/yard-file.ts';
import { limitPairsOf, limitsOf, limitsOfPlanned } from '../../../src/engine/quote/limits.ts';
import { quoteOrder } from '../../../src/engine/quote/quote.ts';
import { randomYard } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const pair = (id: string, due?: string) => ({ id, due, weight: 1, lines: [{ kit: 'pair', quantity: 1 }] });
const slow = { mixes: [{ ...base.mixes[0]!, demouldMinutes: 1000 }] };
const named = (yard: YardFile) => limitsOf(yard, pair('new')).map((x) => [x.limit, x.earliestOn, x.daysSooner]);

describe('what holds a pair of panels', () => {
  // Filled on Saturday the 10th and stripped on the 17th. With a session on Friday the 9th they are stripped on the 10th.
  test('nothing but the next session: one more brings it a week forward', () => {
    const limits = named(smallYard({ ...slow, orders: [] }));
    expect(limits).toEqual([['session', '2027-04-10', 7]]);
  });

  test('one mould short: another would do, and so would mending the second', () => {
    const moulds = [base.moulds[0]!, { ...base.moulds[1]!, condition: 'damaged' as const }];
    const limits = named(smallYard({ ...slow, moulds, orders: [] }));
    expect(limits).toContainEqual(['mended', '2027-04-17', 7]);
  });

  test('mortar that comes on the 20th', () => {
    const materials = base.materials.map((m) => (m.id === 'mortar' ? { ...m, onHand: 0 } : m));
    const incoming = [{ material: 'mortar', quantity: 5, on: '2027-04-20' }];
    const limits = limitsOf(smallYard({ ...slow, materials, incoming, orders: [] }), pair('new'));
    expect(limits[0]).toMatchObject({ limit: 'material', what: 'mortar', earliestOn: '2027-04-17', daysSooner: 14 });
  });

  test('an order that cannot be made at all is held by nothing that would help', () => {
    expect(limitsOf(smallYard({ moulds: [], orders: [] }), pair('new'))).toEqual([]);
  });
});

describe('two things at once', () => {
  const both = (changes: Partial<YardFileInput>) =>
    limitPairsOf(smallYard({ ...slow, orders: [], ...changes }), pair('new')).map((x) => [x.what, x.earliestOn]);

  // One mould, and mortar on the 20th: poured on the 24th and 1 May, stripped by the 8th. With mortar now it is the 24th of
  // April, with the second mould 1 May, with both the 17th.
  test('are told where together they bring more than either alone', () => {
    const moulds = [base.moulds[0]!, { ...base.moulds[1]!, condition: 'damaged' as const }];
    const materials = base.materials.map((m) => (m.id === 'mortar' ? { ...m, onHand: 0 } : m));
    const incoming = [{ material: 'mortar', quantity: 5, on: '2027-04-20' }];
    expect(both({ moulds, materials, incoming })).toContainEqual(['900 no. 2, mortar', '2027-04-17']);
  });

  // One more session on the 9th brings it a week forward, whatever else there is besides.
  test('are not told where one of them does it all', () => expect(both({})).toEqual([]));
});

describe('over random yards', () => {
  const all = Array.from({ length: 14 }, (_, seed) => {
    const yard = randomYard(seed, 'small');
    const order = { ...yard.orders[0]!, id: 'new' };
    return { seed, quote: quoteOrder(yard, order, { limits: true }) };
  });

  test('only real gains, largest first, each as large as its date says', () => {
    for (const { quote, seed } of all) {
      const gains = quote.limits.map((x) => x.daysSooner);
      expect(
        gains.every((days) => days > 0),
        `seed ${seed}`,
      ).toBe(true);
      expect(gains).toEqual([...gains].sort((a, b) => b - a));
      for (const x of quote.limits) expect(dayNumber(quote.earliestOn!) - dayNumber(x.earliestOn)).toBe(x.daysSooner);
    }
    expect(all.filter((x) => x.quote.limits.length > 0).length).toBeGreaterThan(3);
  });

  test('a quote without them is the same but for the list', () => {
    const yard = randomYard(1, 'small');
    const order = { ...yard.orders[0]!, id: 'new' };
    expect(quoteOrder(yard, order)).toEqual({ ...all[1]!.quote, limits: [] });
  });
});

describe('an order that is taken already', () => {
  test('is asked about as if it were new', () => {
    const orders = [pair('a', '2027-04-17'), pair('b', '2027-04-17')];
    const yard = smallYard({ ...slow, orders, finished: [{ casting: 'panel-900', count: 1, order: 'b' }] });
    const alone = { ...yard, orders: [yard.orders[0]!], finished: [{ casting: 'panel-900', count: 1 }] };
    expect(limitsOfPlanned(yard, 'b')).toEqual(limitsOf(alone, yard.orders[1]!));
  });

  test('one that is not there is held by nothing', () => expect(limitsOfPlanned(base, 'nobody')).toEqual([]));
});
