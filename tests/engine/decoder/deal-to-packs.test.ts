import { describe, expect, it } from 'vitest';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { smallYard } from '../../support/small-yard.ts';

/** One person on Saturday from 8:00; a pair is packed in 5 minutes. */
const planned = (changes: Partial<YardFileInput>) => planYard(smallYard(changes), { effort: 'quick' });
const pair = (id: string, due: string) => ({ id, due, lines: [{ kit: 'pair', quantity: 1 }] });
const at = (hhmm: string) => `2027-04-10T${hhmm}:00+01:00`;
const packed = { order: 'fixed', packStart: at('10:00'), packEnd: at('10:05') };
const keep = { batches: [], pours: [], packs: [packed] };
/** By its date the other one comes first in every sequence. */
const orders = [pair('fixed', '2027-05-29'), pair('sooner', '2027-04-10')];

describe('an order whose packing is fixed', () => {
  it('keeps the finished pieces that it is packed of', () => {
    const plan = planned({ finished: [{ casting: 'panel-900', count: 2 }], orders, keep });
    expect(plan.dropped).toEqual([]);
    expect(plan.orders.find(({ id }) => id === 'fixed')).toMatchObject({
      packStart: at('10:00'),
      fromFinished: [{ finished: 0, count: 2 }],
    });
    expect(plan.pours.map(({ order }) => order)).toEqual(['sooner', 'sooner']);
  });

  it('keeps pieces in moulds that are out by then, and none that are not', () => {
    const inMould = [
      { mould: '900 no. 1', casting: 'panel-900', filledAt: '2027-04-03T11:00:00+01:00' },
      { mould: '900 no. 2', casting: 'panel-900', filledAt: '2027-04-03T11:10:00+01:00' },
    ];
    const strips = inMould.map(({ mould }, i) => ({
      mould,
      ...{ stripStart: at(i === 0 ? '08:00' : '08:20'), stripEnd: at(i === 0 ? '08:08' : '08:28') },
    }));
    const plan = planned({ inMould, orders, keep: { ...keep, strips } });
    expect(plan.dropped).toEqual([]);
    expect(plan.orders.find(({ id }) => id === 'fixed')?.packStart).toBe(at('10:00'));
    const soon = { ...packed, packStart: at('08:10'), packEnd: at('08:15') };
    const tooSoon = planned({ inMould, orders, keep: { ...keep, strips, packs: [soon] } });
    expect(tooSoon.dropped).toMatchObject([{ pack: 'fixed', reason: 'the order is not ready by then' }]);
    expect(tooSoon.orders.find(({ id }) => id === 'sooner')).toMatchObject({ completesOn: '2027-04-10', daysLate: 0 });
  });
});
