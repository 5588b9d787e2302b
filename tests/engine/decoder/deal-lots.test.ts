import { describe, expect, it } from 'vitest';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { smallYard } from '../../support/small-yard.ts';

const panels = (id: string, quantity: number, more: object = {}) => ({
  ...{ id, lines: [{ casting: 'panel-900', quantity }] },
  ...more,
});
const lot = (day: string, more: object = {}) => ({
  ...{ casting: 'panel-900', count: 1, readyAt: `2027-${day}T12:00:00+01:00` },
  ...more,
});
const now = { casting: 'panel-900', count: 1 };
const planned = (changes: Partial<YardFileInput>) => planYard(smallYard(changes), { effort: 'quick' });

describe('finished pieces', () => {
  it('go out soonest first, wherever they stand in the file', () => {
    for (const finished of [
      [lot('05-22'), now],
      [now, lot('05-22')],
    ]) {
      const { orders, pours } = planned({ finished, orders: [panels('a', 1, { due: '2027-04-10' })] });
      expect(orders[0]).toMatchObject({ completesOn: '2027-04-10', daysLate: 0 });
      expect(orders[0]!.fromFinished).toEqual([{ finished: finished.indexOf(now), count: 1 }]);
      expect(pours).toEqual([]);
    }
  });

  it('are poured anew where waiting would make an order later', () => {
    const { orders, pours } = planned({ finished: [lot('05-20')], orders: [panels('a', 1, { due: '2027-04-10' })] });
    expect(orders[0]).toMatchObject({ completesOn: '2027-04-10', fromFinished: [] });
    expect(pours.map(({ order }) => order)).toEqual(['a']);
  });

  it('go to whom they are in time for, and nothing is poured for him', () => {
    const orders = [panels('soon', 1, { due: '2027-04-10' }), panels('later', 1, { due: '2027-05-29' })];
    const plan = planned({ finished: [lot('05-20')], orders });
    expect(plan.orders.map(({ id, fromFinished }) => [id, fromFinished.length])).toEqual([
      ['soon', 0],
      ['later', 1],
    ]);
    expect(plan.pours.map(({ order }) => order)).toEqual(['soon']);
  });

  it('are taken before a new one that would be ready later', () => {
    // Both moulds are damaged until the middle of May; the piece is ready before.
    const broken = { condition: 'damaged' as const, repairedOn: '2027-05-20' };
    const moulds = smallYard().moulds.map((mould) => ({ ...mould, ...broken }));
    const plan = planned({ moulds, finished: [lot('05-14')], orders: [panels('a', 2, { due: '2027-04-10' })] });
    expect(plan.orders[0]).toMatchObject({ completesOn: '2027-05-22', fromFinished: [{ finished: 0, count: 1 }] });
    expect(plan.pours).toHaveLength(1);
  });

  it('are waited for where no mould can make them', () => {
    const plan = planned({ moulds: [], finished: [lot('05-14')], orders: [panels('a', 1, { due: '2027-04-10' })] });
    expect(plan.orders[0]).toMatchObject({ completesOn: '2027-05-15', daysLate: 35 });
  });

  it('are waited for where there is no bag for a new one', () => {
    const materials = smallYard().materials.map((one) => (one.id === 'mortar' ? { ...one, onHand: 0 } : one));
    const plan = planned({ materials, finished: [lot('05-14')], orders: [panels('a', 1, { due: '2027-04-10' })] });
    expect(plan.orders[0]).toMatchObject({ completesOn: '2027-05-15', daysLate: 35 });
  });

  it('that are set aside go to nobody else', () => {
    const finished = [lot('04-09', { order: 'b' })];
    const moulds = smallYard().moulds.slice(0, 1);
    const orders = [panels('a', 1, { due: '2027-04-24' }), panels('b', 1, { due: '2027-04-10' })];
    const plan = planned({ finished, moulds, orders });
    expect(plan.orders.map(({ fromFinished }) => fromFinished.length)).toEqual([0, 1]);
  });
});
