import { describe, expect, test } from 'vitest';
import { readYardFile, type YardFile } from '../../../shared/yard-file.ts';
import { applyFixed, reserveFixed } from '../../../src/engine/decoder/apply-fixed.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { refereePlan } from '../../../src/engine/referee.ts';
import { audit } from '../../contract/audit-plan.mjs';
import { begunDecoder } from '../../support/begun-decoder.ts';
import { yardSeeds } from '../../support/property-seed.ts';
import { randomYard } from '../../support/random-yard.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardWithFixedPours } from '../../support/yard-with-fixed-pours.ts';

const quick = (yard: YardFile) => planYard(yard, { effort: 'quick' });

const checked = (input: unknown): YardFile => {
  const read = readYardFile(input);
  if (!read.ok) throw new Error(read.faults.map((x) => `${x.path}: ${x.message}`).join('; '));
  return read.yard;
};

describe('the plan of a small yard, all of it fixed', () => {
  const yard = smallYard({ orders: [{ id: '27-001', lines: [{ kit: 'pair', quantity: 3 }] }] });
  const plan = quick(yard);
  const fixed = { ...yard, keep: { batches: plan.batches, pours: plan.pours } };

  test('comes back the same', () => {
    const again = quick(fixed);
    expect(again.dropped).toEqual([]);
    expect(again.batches).toEqual(plan.batches);
    expect(again.pours).toEqual(plan.pours);
  });

  test('moulds wait for it, and its bags are spoken for', () => {
    const state = begunDecoder(fixed);
    expect([...state.moulds.reserved]).toEqual([3, 3]);
    // 20 bags, three batches of one: 17 are left for others.
    state.stock.ask();
    state.stock.add([{ material: 0, quantity: 17 }]);
    expect(state.stock.shortBy(state.timeline.from)).toBe(null);
    state.stock.add([{ material: 0, quantity: 1 }]);
    expect(state.stock.shortBy(state.timeline.from)).toEqual({ material: 0, quantity: 1 });
    reserveFixed(state);
    expect([...state.moulds.reserved]).toEqual([3, 3]);
  });

  test('its pours are placed in their shift before anything else', () => {
    const state = begunDecoder(fixed);
    applyFixed(state);
    const first = plan.batches.filter((b) => b.start.startsWith('2027-04-10'));
    expect(state.placed.batches).toBe(first.length);
    expect(state.placed.batchFixed[0]).toBe(0);
    expect(state.demand.need[0]).toBe(6 - state.placed.pours);
  });

  test('for an order that is gone its pieces are for stock, also after the last order is done', () => {
    const pours = plan.pours.map(({ order: _order, ...pour }) => pour);
    const idle = { ...fixed, orders: [], keep: { batches: plan.batches, pours } };
    const again = quick(idle);
    expect(again.batches).toEqual(plan.batches);
    expect(again.pours.every((p) => p.order === undefined)).toBe(true);
    expect(audit(idle, again).faults).toEqual([]);
  });
});

test('the ids of new batches and pours are none that fixed ones have', () => {
  const yard = smallYard();
  const plan = quick(yard);
  const batches = plan.batches.map((b) => ({ ...b, id: 'B2', pours: ['P2', 'P1'] }));
  const pours = plan.pours.map((p, i) => ({ ...p, batch: 'B2', id: i === 0 ? 'P2' : 'P1' }));
  const more = {
    ...yard,
    keep: { batches, pours },
    orders: [...yard.orders, { id: 'b', weight: 1, lines: yard.orders[0]!.lines }],
  };
  const again = quick(more);
  const ids = [...again.batches.map((b) => b.id), ...again.pours.map((p) => p.id)];
  expect(new Set(ids).size).toBe(ids.length);
  expect(again.batches.find((b) => b.id === 'B2')?.start).toBe(plan.batches[0]!.start);
  expect(audit(more, again).faults).toEqual([]);
});

describe('random yards, the first days of their plans fixed', () => {
  const fixedOf = (seed: number, mishaps: number) => {
    const yard = randomYard(seed);
    return yardWithFixedPours(yard, quick(yard), seed, mishaps);
  };
  /** Faults of the plan of a yard with fixed batches by both checks, and how many fixed batches there were and went. */
  const planned = (yard: YardFile) => {
    const plan = quick(yard);
    const faults = [...audit(yard, plan).faults, ...refereePlan(yard, plan).map((x) => `${x.rule} ${x.message}`)];
    return { faults, fixed: yard.keep?.batches.length ?? 0, dropped: plan.dropped.length };
  };
  const total = (list: ReturnType<typeof planned>[], of: 'fixed' | 'dropped') => list.reduce((n, x) => n + x[of], 0);
  const SEEDS = yardSeeds(24);

  test('keep all of them where nothing has changed', () => {
    const all = SEEDS.map((seed) => planned(fixedOf(seed, 0)));
    expect(all.flatMap((x) => x.faults)).toEqual([]);
    expect(total(all, 'dropped')).toBe(0);
    expect(total(all, 'fixed')).toBeGreaterThan(50);
  });

  test('and obey every rule after a mishap or two, those that went with a reason', () => {
    const all = SEEDS.map((seed) => planned(fixedOf(seed, 1 + (seed % 2))));
    expect(all.flatMap((x) => x.faults).filter((text) => !text.includes('and yet there'))).toEqual([]);
    expect(total(all, 'dropped')).toBeGreaterThan(5);
  });

  test('with a mould retired only its batches go', () => {
    const all = SEEDS.map((seed) => {
      const yard = structuredClone(fixedOf(seed, 0));
      const lost = yard.keep!.pours[0]?.mould;
      const retired = checked({
        ...yard,
        moulds: yard.moulds.map((m) => (m.id === lost ? { ...m, condition: 'retired', prepped: false } : m)),
      });
      const mine = new Set(yard.keep!.pours.filter((p) => p.mould === lost).map((p) => p.batch));
      const plan = quick(retired);
      expect(plan.dropped.every((d) => d.reason.length > 0)).toBe(true);
      expect([...mine].filter((id) => !plan.dropped.some((d) => d.batch === id))).toEqual([]);
      return planned(retired);
    });
    expect(all.flatMap((x) => x.faults)).toEqual([]);
    expect(total(all, 'dropped')).toBeGreaterThan(12);
  });

  test('with an order removed its pours stay', () => {
    const all = SEEDS.map((seed) => {
      const yard = structuredClone(fixedOf(seed, 0));
      const gone = yard.keep!.pours.find((p) => p.order !== undefined)?.order;
      const free = <T extends { order?: string }>(list: T[]) =>
        list.map(({ order, ...x }) => (order === undefined || order === gone ? x : { ...x, order }));
      return planned(
        checked({
          ...yard,
          orders: yard.orders.filter((o) => o.id !== gone),
          finished: free(yard.finished),
          inMould: free(yard.inMould),
          keep: { ...yard.keep, pours: free(yard.keep!.pours) },
        }),
      );
    });
    expect(all.flatMap((x) => x.faults)).toEqual([]);
    expect(total(all, 'dropped')).toBe(0);
  });
});
