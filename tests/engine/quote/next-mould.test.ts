import { expect, test } from 'vitest';
import { nextMoulds } from '../../../src/engine/quote/next-mould.ts';
import { smallYard } from '../../support/small-yard.ts';

const base = smallYard();
const long = { ...base.castings[0]!, id: 'long', kg: 5, prepMinutes: 1, cleanMinutes: 1, fillMinutes: 1 };
const mould = (casting: string) => ({ ...base.moulds[0]!, id: casting, makes: [{ casting }], setFor: casting });
const order = (id: string, casting: string, quantity: number, due: string, weight = 1) => ({
  id,
  due,
  weight,
  lines: [{ casting, quantity }],
});
const yardOf = (...orders: ReturnType<typeof order>[]) =>
  smallYard({
    castings: [...base.castings, long],
    mixes: [{ ...base.mixes[0]!, demouldMinutes: 1000, workingMinutes: 60, maxBags: 3 }],
    moulds: [mould('panel-900'), mould('long')],
    orders,
  });

test('no mould is worth building where nothing is late', () => {
  expect(nextMoulds(yardOf(order('a', 'panel-900', 2, '2027-06-01')))).toEqual([]);
});

// One mould of each, one turn a Saturday from the 10th on. Three of 900 are there on 1 May, two weeks after the 17th; with a
// mould more, built by the 11th, the first on the 17th and two on the 24th: a week saved, weight 2. Two long ones on the
// 24th, a week late: the new mould turns first on the 17th, so that the second is there on the 24th as before.
test('the mould that takes most off what is late comes first, one that takes nothing off not at all', () => {
  const yard = yardOf(order('a', 'panel-900', 3, '2027-04-17', 2), order('b', 'long', 2, '2027-04-17'));
  expect(nextMoulds(yard)).toEqual([
    { casting: 'panel-900', weightedDaysSaved: 14, daysSaved: [{ order: 'a', days: 7 }] },
  ]);
});
