import { describe, expect, test } from 'vitest';
import type { UnitSystem } from '../../../shared/units.ts';
import { planYard } from '../../../src/engine/plan.ts';
import { reasonShown } from '../../../src/usecases/plan/reason-shown.ts';
import { smallYard } from '../../support/small-yard.ts';

const acidYard = (unit: string) => {
  const base = smallYard();
  return smallYard({
    ...base,
    materials: [...base.materials, { id: 'acid', name: 'Citric acid', unit, onHand: 0 }],
    mixes: base.mixes.map((mix) => ({ ...mix, perBag: [{ material: 'acid', quantity: 57 }] })),
  });
};

describe('why something cannot be made', () => {
  // 57 g to the bag, and the pair takes 27.2 of its 27.5 kg: 56.38 g. 1 oz = 28.349523125 g (NIST SP 811, appendix B).
  test.each<[string, UnitSystem, string]>([
    ['g', 'metric', 'Citric acid cannot be had: 56.38 more g are needed'],
    ['g', 'US', 'Citric acid cannot be had: 1.99 more oz are needed'],
    ['sachet', 'US', 'Citric acid cannot be had: 56.38 more sachet are needed'],
  ])('of what is kept in %s is said so in a %s yard, as the plan has it', (unit, system, words) => {
    const yard = acidYard(unit);
    const reason = planYard(yard).unplanned[0]?.reason ?? null;
    expect(reasonShown(reason, yard.materials, system)).toBe(words);
  });

  test('names a day as people do', () => {
    const { orders } = smallYard();
    const late = planYard(smallYard({ orders: [{ ...orders[0]!, notBefore: '2028-12-20' }] })).unplanned[0]!.reason;
    expect(reasonShown(late, [], 'metric')).toBe('nothing is to be poured or packed for it before Wed 20 Dec 2028');
  });

  test.each([null, 'no usable mould makes panel 900', 'Citric acid cannot be had: some more g are needed'])(
    '%j stays as it is',
    (reason) => expect(reasonShown(reason, acidYard('g').materials, 'US')).toBe(reason),
  );
});
