import { expect, test } from 'vitest';
import type { PlanStick } from '../../../shared/plan.ts';
import { cutList } from '../../../src/usecases/today/cut-list.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';

/* Rods of 3000 mm with a kerf of 3. */
const stick = (clock: string, cuts: [string, number, number][], offcutMm?: number): PlanStick => ({
  ...{ material: 'rod', openedAt: saturday(clock) },
  cuts: cuts.map(([to, lengthMm, count]) => ({ for: to, lengthMm, count })),
  ...(offcutMm === undefined ? {} : { offcutMm }),
});
const listed = (sticks: PlanStick[], system: 'metric' | 'US' = 'metric') =>
  cutList(sticks, plannedYard(), { cutFor: new Set(['B2', 'B3']), done: new Set(['B1']) }, system);

test('each stick has what is cut from it, the longest first, in the order in which they are opened', () => {
  const later = stick('10:00', [['B3', 190, 2]], 635);
  const first = stick('09:00', [
    ['B2', 190, 2],
    ['B3', 300, 1],
    ['B3', 190, 4],
    ['B9', 500, 1],
  ]);
  expect(listed([later, first, stick('09:00', [['B9', 500, 1]])])).toMatchObject([
    {
      ...{ name: 'Rod 12 mm', length: '3000 mm', whole: true },
      cuts: [
        { length: '300 mm', count: 1 },
        { length: '190 mm', count: 6 },
      ],
    },
    { name: 'Rod 12 mm', length: '635 mm', whole: false, cuts: [{ length: '190 mm', count: 2 }] },
  ]);
});

// By hand: two pins of 300 and a kerf each leave 2394 of a rod, 7 ft 10 1/4 in.
test('of a stick that an earlier batch opens it is the rest', () => {
  const shared = [
    stick('09:00', [
      ['B1', 300, 2],
      ['B2', 190, 1],
    ]),
  ];
  expect(listed(shared)).toMatchObject([{ length: '2394 mm', whole: false }]);
  expect(listed(shared, 'US')[0]?.length).toBe('7 ft 10 1/4 in');
});

// By hand: 303 and six times 193 leave 1539 of 3000; 190 and a saw cut leave 109 of 302, shorter than anything that is cut.
test('what is left is kept from the shortest piece on, and drawn is each piece in the order of cutting', () => {
  const cuts: [string, number, number][] = [
    ['B2', 190, 6],
    ['B3', 300, 1],
  ];
  const [kept] = listed([stick('09:00', cuts)]);
  expect(kept?.left).toEqual({ mm: 1539, length: '1539 mm', isKept: true });
  expect(kept?.bar).toEqual({
    ...{ mm: 3000, kerfMm: 3 },
    cuts: [{ mm: 300, text: '300' }, ...Array.from({ length: 6 }, () => ({ mm: 190, text: '190' }))],
  });
  expect(listed([stick('09:00', [['B2', 190, 1]], 302)])[0]?.left).toMatchObject({ mm: 109, isKept: false });
  expect(listed([stick('09:00', [['B2', 190, 1]], 190)])[0]?.left).toBeNull();
});
