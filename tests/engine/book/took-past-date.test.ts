import { expect, test } from 'vitest';
import type { BagsOf } from '../../../shared/bags.ts';
import { tookPastDate } from '../../../src/engine/book/took-past-date.ts';
import { smallYard } from '../../support/small-yard.ts';

const AT = '2027-04-10T08:30:00+01:00';

test.each<[string, BagsOf | undefined, number | undefined, boolean]>([
  ['of yesterday', { useBy: '2027-04-09' }, undefined, true],
  ['of today', { useBy: '2027-04-10' }, undefined, false],
  ['opened too long ago', { useBy: '2027-06-01', openedAt: '2027-04-07T09:00:00+01:00' }, 2, true],
  ['opened not long ago', { useBy: '2027-06-01', openedAt: '2027-04-08T09:00:00+01:00' }, 2, false],
  ['of no known date', undefined, 2, false],
])('a bag %s', (_, bags, openedDays, isPast) => {
  const yard = smallYard();
  const materials = yard.materials.map((one) => ({ ...one, ...(openedDays === undefined ? {} : { openedDays }) }));
  const used = {
    ...{ kind: 'stock' as const, material: 'mortar', quantity: -1, why: { kind: 'used' as const, at: AT } },
    ...(bags && { bags }),
  };
  expect(tookPastDate([used], { ...yard, materials })).toBe(isPast);
  expect(tookPastDate([{ ...used, quantity: 1 }], { ...yard, materials })).toBe(false);
});
