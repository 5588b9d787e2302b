import { describe, expect, test } from 'vitest';
import type { YardFileInput } from '../../../shared/yard-file.ts';
import { refusals } from '../../../src/engine/decoder/admit.ts';
import { compile } from '../../../src/engine/decoder/compile.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const panels = (id: string, quantity: number) => ({ id, lines: [{ casting: 'panel-900', quantity }] });
const refused = (changes: Partial<YardFileInput>) => {
  const yard = smallYard(changes);
  const found = refusals(
    compile(yard),
    yard.orders.map((_, o) => o),
  );
  return Object.fromEntries([...found].map(([o, { cause, reason }]) => [yard.orders[o]!.id, `${cause}: ${reason}`]));
};
const noMould = 'mould: no usable mould makes panel 900';
const three = [{ casting: 'panel-900', count: 3 }];

describe('pieces that are there already', () => {
  test('are taken by the order before, and are gone for the one after', () => {
    expect(refused({ moulds: [], finished: three, orders: [panels('a', 2), panels('b', 1)] })).toEqual({});
    expect(refused({ moulds: [], finished: three, orders: [panels('a', 2), panels('b', 2)] })).toEqual({ b: noMould });
  });

  test('are left for the others by an order that is refused', () => {
    expect(refused({ moulds: [], finished: three, orders: [panels('a', 4), panels('b', 3)] })).toEqual({ a: noMould });
  });

  test('set aside for one order are no other’s', () => {
    const finished = [{ casting: 'panel-900', count: 3, order: 'b' }];
    const orders = [panels('a', 1), panels('b', 3)];
    expect(refused({ moulds: [], finished, orders })).toEqual({ a: noMould });
  });
});

// 13.6 kg of the 27.5 that a bag places are 0.49 bags: two panels come of one bag, and two more do not.
test('material that is used by the order before is gone for the one after, and left by one that is refused', () => {
  const materials = base.materials.map((m) => (m.id === 'mortar' ? { ...m, onHand: 1 } : m));
  const short = 'material: Fast-setting mortar cannot be had: 0.98 more bag are needed';
  expect(refused({ materials, orders: [panels('a', 2), panels('b', 2)] })).toEqual({ b: short });
  const four = 'material: Fast-setting mortar cannot be had: 0.98 more bag are needed';
  expect(refused({ materials, orders: [panels('a', 4), panels('b', 2)] })).toEqual({ a: four });
});
