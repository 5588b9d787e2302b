import { describe, expect, it } from 'vitest';
import { planYard } from '../../../src/engine/plan.ts';
import { smallYard } from '../../support/small-yard.ts';

const lines = [{ casting: 'panel-900', quantity: 1 }];

describe('an order with a first day', () => {
  it('before the first session is asked for once, like any other', () => {
    const yard = smallYard({ orders: [{ id: '27-001', due: '2027-04-10', notBefore: '2027-04-09', lines }] });
    const { pours, orders } = planYard(yard, { effort: 'quick' });
    expect(pours.map(({ order }) => order)).toEqual(['27-001']);
    expect(orders[0]!.completesOn).toBe('2027-04-10');
  });

  it('after the first session waits for the next', () => {
    const yard = smallYard({ orders: [{ id: '27-001', due: '2027-04-10', notBefore: '2027-04-11', lines }] });
    const { pours, orders } = planYard(yard, { effort: 'quick' });
    expect(pours.map(({ order }) => order)).toEqual(['27-001']);
    expect(orders[0]!.completesOn).toBe('2027-04-17');
  });
});
