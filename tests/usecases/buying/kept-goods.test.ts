import { describe, expect, test } from 'vitest';
import { planYard } from '../../../src/engine/plan.ts';
import { goodsOfKept, shortForKept } from '../../../src/usecases/buying/kept-goods.ts';
import { materialUses } from '../../../src/usecases/buying/material-uses.ts';
import { showBuying } from '../../../src/usecases/buying/show-buying.ts';
import { keepReady } from '../../../src/usecases/pieces/keep-ready.ts';
import { doneOf } from '../../support/outcomes.ts';
import { smallYard } from '../../support/small-yard.ts';
import { yardContext } from '../../support/yard-context.ts';

const [mortar, rod] = smallYard().materials;
const withRods = (onHand: number) =>
  smallYard({ materials: [mortar!, { ...rod!, onHand, pack: 1, leadDays: 2, minimum: 0, stickMm: 1000, kerfMm: 2 }] });

/* Of 1000 mm three pins of 300 are cut, a kerf of 2 each: a pair takes two of them. The order of the yard takes one pair. */
describe('what kits take that are to stand ready', () => {
  test('is whole sticks of what is cut, and nothing of pieces', () => {
    const sticks = (count: number) => [...goodsOfKept([{ kit: 'pair', count }], withRods(0))];
    expect([1, 2, 3].map(sticks)).toEqual([[['rod', 1]], [['rod', 2]], [['rod', 2]]]);
    expect([...goodsOfKept([{ casting: 'panel-900', count: 4 }], withRods(0))]).toEqual([]);
  });

  test('is bought as far as what is planned leaves too little of it', () => {
    const short = (onHand: number) => {
      const yard = withRods(onHand);
      const plan = planYard(yard, { effort: 'quick' });
      return shortForKept([{ kit: 'pair', count: 2 }], { yard, plan, uses: materialUses(yard, plan) }).get('rod') ?? 0;
    };
    // The plan takes one stick, and buys it where there is none.
    expect([0, 1, 2, 3].map(short)).toEqual([2, 2, 1, 0]);
  });

  test('stands on the list to buy with its reason, until nothing is to stand ready', async () => {
    const context = await yardContext(withRods(1));
    const rods = async () => {
      const { weeks } = await showBuying(context);
      return weeks
        .flatMap(({ trips }) => trips.flatMap(({ lines }) => lines))
        .filter(({ material }) => material === 'rod')
        .map(({ beside, quantity }) => [beside, quantity]);
    };
    expect(await rods()).toEqual([]);
    doneOf(await keepReady(context, { what: 'kit:pair', count: 2 }));
    expect(await rods()).toEqual([['to stand ready', 2]]);
    doneOf(await keepReady(context, { what: 'kit:pair', count: 0 }));
    expect(await rods()).toEqual([]);
  });
});
