import { expect, test } from 'vitest';
import { asOf, pouredToCome } from '../../../src/engine/book/as-of.ts';
import { plannedYard, saturday } from '../../support/planned-yard.ts';

const piece = (mould: string, clock: string) => ({ mould, casting: 'panel-900', filledAt: saturday(clock) });
const file = { ...plannedYard(), inMould: [piece('900 no. 1', '09:22'), piece('900 no. 2', '09:29')] };

test('what was poured at a time still to come counts as poured just now', () => {
  const yard = asOf(file, saturday('09:25'));
  expect(yard).toEqual({
    ...{ ...file, yard: { ...file.yard, now: saturday('09:25') } },
    inMould: [piece('900 no. 1', '09:22'), piece('900 no. 2', '09:25')],
  });
});

// Poured at this very minute is not to come, in whichever zone it is written.
test('what was poured by now stays as it is written', () => {
  const yard = asOf(file, '2027-04-10T08:29:00Z');
  expect(yard.inMould).toEqual(file.inMould);
  expect(pouredToCome(yard)).toEqual([]);
  expect(pouredToCome({ ...yard, yard: { ...yard.yard, now: saturday('09:28') } })).toEqual([file.inMould[1]]);
});
