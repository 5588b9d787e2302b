import { describe, expect, test } from 'vitest';
import { smallYard } from '../../support/small-yard.ts';
import { buyByHand, receiveByHand } from './hand-buying.ts';

describe('Buying by hand', () => {
  test('orders at once all that the plan has yet to buy, there after its lead days', () => {
    const yard = { ...smallYard(), incoming: [] };
    const [material] = yard.materials;
    const buys = [4, 3].map((quantity) => ({
      ...{ material: material!.id, quantity, orderBy: '2027-04-20', arrivesOn: '2027-04-23' },
    }));
    material!.leadDays = 3;
    expect(buyByHand(yard, { buys }, '2027-04-06')).toBe(true);
    expect(yard.incoming).toEqual([{ material: material!.id, quantity: 7, on: '2027-04-09' }]);
  });

  test('orders nothing where the plan buys nothing', () => {
    const yard = { ...smallYard(), incoming: [] };
    expect(buyByHand(yard, { buys: [] }, '2027-04-06')).toBe(false);
    expect(yard.incoming).toEqual([]);
  });
});

describe('Deliveries by hand', () => {
  const coming = () => {
    const yard = smallYard();
    const [material] = yard.materials;
    Object.assign(yard, { incoming: [{ material: material!.id, quantity: 7, on: '2027-04-09' }] });
    return { yard, toldLate: new Set<(typeof yard.incoming)[number]>(), before: material!.onHand };
  };

  test('come on the day, into the stock', () => {
    const { before, ...season } = coming();
    expect(receiveByHand(season, '2027-04-09', () => 0)).toBe(false);
    expect(season.yard.incoming).toEqual([]);
    expect(season.yard.materials[0]!.onHand).toBe(before + 7);
  });

  test('that are late are told another day, and come on it', () => {
    const { before, ...season } = coming();
    expect(receiveByHand(season, '2027-04-09', () => 4)).toBe(true);
    expect(season.yard.incoming[0]!.on).toBe('2027-04-13');
    expect(season.yard.materials[0]!.onHand).toBe(before);
    expect(receiveByHand(season, '2027-04-13', () => 4)).toBe(false);
    expect(season.yard.materials[0]!.onHand).toBe(before + 7);
  });
});
